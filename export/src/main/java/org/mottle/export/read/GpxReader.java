package org.mottle.export.read;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Length;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/**
 * The waypoints of a GPX file: always WGS 84. Their names become {@code st_id}, their times {@code
 * t_local}, their heights {@code z_m}; description and comment stand as {@code desc} and {@code
 * cmt}. Tracks and routes are not stations and are not read.
 */
final class GpxReader {
  private static final List<String> COLUMNS = List.of("st_id", "t_local", "z_m", "desc", "cmt");
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final Path path;
  private final String name;
  private final InputOptions options;

  GpxReader(Path path, InputOptions options) {
    this.path = path;
    this.name = path.getFileName().toString();
    this.options = options;
  }

  FeatureTable read() throws IOException {
    GPX gpx = parsed();
    if (gpx.getWayPoints().isEmpty()) {
      throw new InputRefused(
          "%s holds no waypoints (%d tracks, %d routes); store the stations as waypoints"
              .formatted(name, gpx.getTracks().size(), gpx.getRoutes().size()));
    }
    List<String> notes = new ArrayList<>();
    GivenCrs.choose(name, Optional.of(Crs.wgs84()), options, notes);
    if (!gpx.getTracks().isEmpty()) {
      notes.add("%s: its %d tracks are not read".formatted(name, gpx.getTracks().size()));
    }
    List<FeatureTable.Row> rows = new ArrayList<>();
    for (WayPoint w : gpx.getWayPoints()) {
      Coordinate c = new Coordinate(w.getLongitude().doubleValue(), w.getLatitude().doubleValue());
      List<Object> values = new ArrayList<>();
      values.add(w.getName().orElse(null));
      values.add(w.getTime().map(Object::toString).orElse(null));
      values.add(w.getElevation().map(Length::doubleValue).orElse(null));
      values.add(w.getDescription().orElse(null));
      values.add(w.getComment().orElse(null));
      rows.add(new FeatureTable.Row(rows.size() + 1, FACTORY.createPoint(c), values));
    }
    return new FeatureTable(
        new FeatureTable.Origin(name, "waypoint", false),
        COLUMNS,
        rows,
        Optional.of(Crs.wgs84()),
        notes);
  }

  private GPX parsed() {
    return parsed(path, name);
  }

  static GPX parsed(Path path, String name) {
    try {
      return GPX.Reader.of(GPX.Reader.Mode.LENIENT).read(path);
    } catch (IOException | IllegalArgumentException e) {
      String why = e.getMessage() == null ? "" : e.getMessage().replaceAll("\\s+", " ").strip();
      throw new InputRefused("%s is not sound GPX: %s".formatted(name, why));
    }
  }
}
