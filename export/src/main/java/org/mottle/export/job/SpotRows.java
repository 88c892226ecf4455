package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Stations.Station;
import org.mottle.engine.patch.Spot;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/**
 * Places that were seen but cannot be outlined, as symbols: dry and wet ones, and the stations of a
 * second, drier population where it is mapped apart.
 */
final class SpotRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** A likeliest point farther from its station than this, m, was not seen there. */
  private static final double SEEN_M = 1;

  private static final String DROPS =
      "; consider a water drop penetration test on a core from here before watering: water alone"
          + " may not rewet it";

  private SpotRows() {}

  static List<FeatureRow> of(Outcome.Mapped map) {
    List<FeatureRow> rows = new ArrayList<>();
    for (Spot spot : map.parts().spots()) {
      Station station = map.stations().stations().get(spot.station());
      Map<String, Object> row = named(map, spot.kind().code(), station, spot.pExist());
      row.put("dist_m", spot.distanceM());
      row.put("area_exp", spot.areaExpectedM2());
      row.put("note", note(station, spot.distanceM()));
      rows.add(Layers.SPOT.row(FACTORY.createPoint(spot.point()), row));
    }
    map.basis().kriging().ifPresent(k -> k.low().forEach(low -> rows.add(repel(map, low))));
    return rows;
  }

  private static FeatureRow repel(Outcome.Mapped map, Outcome.Low low) {
    Station station = map.stations().stations().get(low.station());
    Map<String, Object> row = named(map, "repel", station, low.membership());
    row.put("dist_m", 0);
    row.put("note", note(station, 0) + DROPS);
    return Layers.SPOT.row(FACTORY.createPoint(new Coordinate(station.x(), station.y())), row);
  }

  private static Map<String, Object> named(
      Outcome.Mapped map, String kind, Station station, double exists) {
    Map<String, Object> row = MapLayers.named(map.subject());
    row.put("kind", kind);
    row.put("st_id", station.name());
    row.put("p_exist", exists);
    row.put("mapbl", 0);
    return row;
  }

  private static String note(Station station, double metres) {
    String name = station.name().isEmpty() ? "of row " + station.row() : station.name();
    return metres <= SEEN_M
        ? "seen at station " + name + ", size unknown; re-read round it at 1 m"
        : String.format(
            Locale.ROOT,
            "suspected %.0f m from station %s, size unknown; read there and round it at 1 m",
            metres,
            name);
  }
}
