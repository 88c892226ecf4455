package org.mottle.demo.files;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.Point;
import org.mottle.demo.walk.Receiver;
import org.mottle.demo.walk.SurveyLog;

/** The receiver's track of a day as GPX 1.1, a segment for each green, times in UTC. */
final class TrackFile {

  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT);

  private TrackFile() {}

  static String of(SurveyLog log) {
    StringBuilder text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text.append("<gpx version=\"1.1\" creator=\"invented receiver\"");
    text.append(" xmlns=\"http://www.topografix.com/GPX/1/1\">\n<trk><name>");
    text.append(log.survey().name()).append("</name>\n");
    for (Receiver receiver : log.receivers()) {
      List<Receiver.TrackPoint> track = receiver.track();
      if (!track.isEmpty()) {
        text.append("<trkseg>\n");
        track.forEach(p -> point(log, p, text));
        text.append("</trkseg>\n");
      }
    }
    return text.append("</trk>\n</gpx>\n").toString();
  }

  private static void point(SurveyLog log, Receiver.TrackPoint p, StringBuilder text) {
    Point degrees = CoursePlace.PROJECTION.degrees(p.place());
    text.append("<trkpt lat=\"").append(Decimals.fixed(degrees.y(), 7));
    text.append("\" lon=\"").append(Decimals.fixed(degrees.x(), 7)).append("\"><time>");
    text.append(
        SurveyLog.time(log.survey(), p.seconds())
            .withOffsetSameInstant(ZoneOffset.UTC)
            .format(UTC));
    text.append("</time></trkpt>\n");
  }
}
