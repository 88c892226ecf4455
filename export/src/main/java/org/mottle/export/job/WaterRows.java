package org.mottle.export.job;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.course.HandWatering;
import org.mottle.engine.course.Stop;
import org.mottle.engine.water.WaterWanted;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** The stops of a hand-watering walk. */
final class WaterRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private WaterRows() {}

  static List<FeatureRow> of(HandWatering walk) {
    return walk.stops().stream().map(WaterRows::of).toList();
  }

  private static FeatureRow of(Stop stop) {
    Stop.Place place = stop.place();
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", place.greenId());
    row.put("surv_id", place.surveyId());
    row.put("stop", stop.order());
    row.put("what", what(stop));
    row.put("patch_id", place.patch() == 0 ? "" : place.greenId() + "-" + place.patch());
    row.put("st_id", place.station());
    row.put("p_exist", stop.existence());
    row.put("area_m2", stop.areaM2());
    stop.water()
        .ifPresent(
            water -> {
              row.put("def_mm", water.depthMm().best());
              put(row, water, stop.minutes());
            });
    row.put(
        "caution",
        stop.cautions().stream()
            .map(c -> c.name().toLowerCase(Locale.ROOT).replace('_', ' '))
            .collect(Collectors.joining("; ")));
    return Layers.WATER.row(FACTORY.createPoint(new Coordinate(place.x(), place.y())), row);
  }

  static void put(Map<String, Object> row, WaterWanted water, double minutes) {
    row.put("water_l", water.litres().best());
    row.put("wat_lo", water.litres().low());
    row.put("wat_hi", water.litres().high());
    row.put("passes", water.passes());
    row.put("hose_min", minutes);
  }

  private static String what(Stop stop) {
    return switch (stop.what()) {
      case PATCH -> "patch";
      case SPOT -> "spot";
      case REPELLENT -> "repel";
    };
  }
}
