package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.plan.Criterion;
import org.mottle.engine.plan.NextStation;
import org.mottle.engine.plan.StationRanking;
import org.mottle.engine.plan.StationReason;
import org.mottle.engine.plan.StopReason;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** Where to read next on a green, and what that is expected to bring. */
final class NextRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private NextRows() {}

  static List<FeatureRow> of(Outcome.Mapped map) {
    List<FeatureRow> rows = new ArrayList<>();
    for (NextStation s : map.parts().next().map(StationRanking::stations).orElse(List.of())) {
      Map<String, Object> row = MapLayers.named(map.subject());
      row.put("rank", s.rank());
      row.put("why", words(s.why()));
      row.put("gain_m2", s.gainM2());
      row.put("gain_part", s.gainShare());
      row.put("var_drop", s.gain().varianceDrop());
      row.put("walk", s.walk());
      row.put("x", s.x());
      row.put("y", s.y());
      rows.add(Layers.NEXTST.row(FACTORY.createPoint(new Coordinate(s.x(), s.y())), row));
    }
    return rows;
  }

  /** What stands of it in the row of the survey. */
  static void put(Map<String, Object> row, StationRanking ranking) {
    if (ranking.criterion() == Criterion.MISCLASSIFIED_AREA) {
      row.put("mis_m2", ranking.before());
      row.put("mis_next", ranking.after());
    }
    row.put("walk_m", ranking.walkM());
    row.put("nextstop", words(ranking.stop()));
  }

  private static String words(StationReason why) {
    return switch (why) {
      case NEAR_LIMIT -> "near a limit";
      case FAR_FROM_READINGS -> "far from readings";
      case BOTH -> "both";
    };
  }

  private static String words(StopReason stop) {
    return switch (stop) {
      case ENOUGH -> "as many as asked for";
      case GAIN_TOO_SMALL -> "another would hardly tell more";
      case NO_PLACE_LEFT -> "no place left clear of the others";
      case NO_SOUND_DRAW -> "the kriging system could not be solved";
    };
  }
}
