package org.mottle.export.read;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.TrackSegment;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
 * are left out and told. Points out of order of time are put in order.
 */
public final class TrackReader {

  private TrackReader() {}

  /**
   * @param working CRS of the greens
   * @param notes told of points that were left out
   * @throws InputRefused when the file holds no timed track
   */
  public static List<Track> read(String file, Crs working, List<String> notes) {
    Path path = Path.of(file);
    if (!Files.isRegularFile(path)) {
      throw new InputRefused("%s: no such file".formatted(file));
    }
    String name = path.getFileName().toString();
    GPX gpx;
    try {
      gpx = GPX.Reader.of(GPX.Reader.Mode.LENIENT).read(path);
    } catch (IOException | IllegalArgumentException e) {
      throw new InputRefused("%s is not sound GPX: %s".formatted(name, e.getMessage()));
    }
    CrsTransform transform = CrsTransform.between(Crs.wgs84(), working);
    List<Track> tracks = new ArrayList<>();
    int untimed = 0;
    for (TrackSegment segment : gpx.tracks().flatMap(t -> t.segments()).toList()) {
      List<WayPoint> timed =
          segment
              .points()
              .filter(p -> p.getTime().isPresent())
              .sorted(Comparator.comparing(p -> p.getTime().orElseThrow()))
              .toList();
      untimed += segment.getPoints().size() - timed.size();
      if (!timed.isEmpty()) {
        tracks.add(track(timed, transform));
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
    return tracks;
  }

  private static Track track(List<WayPoint> timed, CrsTransform transform) {
    double[] seconds = new double[timed.size()];
    double[] x = new double[seconds.length];
    double[] y = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      WayPoint p = timed.get(i);
      Coordinate c =
          transform.apply(
              new Coordinate(p.getLongitude().doubleValue(), p.getLatitude().doubleValue()));
      seconds[i] = p.getTime().orElseThrow().toEpochMilli() / 1000.0;
      x[i] = c.x;
      y[i] = c.y;
    }
    return new Track(seconds, x, y);
  }
}
