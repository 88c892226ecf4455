package org.mottle.export.read;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.TrackSegment;
import io.jenetics.jpx.WayPoint;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.track.Track;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;

/**
 * Reads the tracks of a GPX file, one a segment. Points without a time cannot place anything: they
 * are left out and told. Points out of order of time are put in order within their segment and
 * told: receivers write points late, and a position holds at its own time wherever it stands.
 */
public final class TrackReader {

  private TrackReader() {}

  /**
   * @param working CRS of the greens
   * @param notes told of points that were left out or put in order
   * @throws InputRefused when the file holds no timed track
   */
  public static List<Track> read(String file, Crs working, List<String> notes) {
    Path path = FeatureFile.existing(file);
    String name = path.getFileName().toString();
    GPX gpx = GpxReader.parsed(path, name);
    CrsTransform transform = CrsTransform.between(Crs.wgs84(), working);
    List<Track> tracks = new ArrayList<>();
    int untimed = 0;
    int unordered = 0;
    for (TrackSegment segment : gpx.tracks().flatMap(t -> t.segments()).toList()) {
      List<WayPoint> timed = segment.points().filter(p -> p.getTime().isPresent()).toList();
      untimed += segment.getPoints().size() - timed.size();
      unordered += backwards(timed);
      if (!timed.isEmpty()) {
        tracks.add(track(name, timed, transform));
      }
    }
    if (tracks.isEmpty()) {
      throw new InputRefused(
          "%s holds no track with times (%d points without, %d waypoints); record the track with times"
              .formatted(name, untimed, gpx.getWayPoints().size()));
    }
    if (untimed > 0) {
      notes.add("%s: %d track points without a time are left out".formatted(name, untimed));
    }
    if (unordered > 0) {
      notes.add(
          "%s: %d track points are earlier than the one before them; put in order of time"
              .formatted(name, unordered));
    }
    return tracks;
  }

  private static int backwards(List<WayPoint> timed) {
    int count = 0;
    for (int i = 1; i < timed.size(); i++) {
      count += time(timed.get(i)).isBefore(time(timed.get(i - 1))) ? 1 : 0;
    }
    return count;
  }

  private static Instant time(WayPoint point) {
    return point.getTime().orElseThrow();
  }

  private static Track track(String name, List<WayPoint> points, CrsTransform transform) {
    List<WayPoint> timed = points.stream().sorted(Comparator.comparing(TrackReader::time)).toList();
    double[] seconds = new double[timed.size()];
    double[] x = new double[seconds.length];
    double[] y = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      WayPoint p = timed.get(i);
      Coordinate c = place(name, p, transform);
      seconds[i] = time(p).toEpochMilli() / 1000.0;
      x[i] = c.x;
      y[i] = c.y;
    }
    return new Track(seconds, x, y);
  }

  private static Coordinate place(String name, WayPoint p, CrsTransform transform) {
    try {
      return transform.apply(
          new Coordinate(p.getLongitude().doubleValue(), p.getLatitude().doubleValue()));
    } catch (InputRefused e) {
      throw new InputRefused("%s, track point of %s: %s".formatted(name, time(p), e.getMessage()));
    }
  }
}
