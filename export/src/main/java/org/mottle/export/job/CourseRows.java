package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.mottle.engine.course.CourseOverview;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.Rank;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Standing;
import org.mottle.engine.water.Watering;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** All greens at a glance, one row each. */
final class CourseRows {

  private CourseRows() {}

  static List<FeatureRow> of(CourseOverview course) {
    return course.greens().stream().map(CourseRows::of).toList();
  }

  private static FeatureRow of(GreenLook look) {
    Map<String, Object> row = MapLayers.named(look.outcome().subject());
    row.put("t_last", look.lastRead().map(Object::toString).orElse(""));
    row.put("history", look.record().history().label());
    row.put("grade", look.record().grade().map(g -> g.letter().name()).orElse(""));
    row.put("standing", look.mapped().map(Outcome.Mapped::standing).orElse(Standing.NONE).code());
    MapLayers.putBand(row, look.outcome().subject().band());
    look.mapped()
        .ifPresent(
            map -> {
              EvenRows.putShares(row, map);
              row.put("cv_corr", map.evenness().variationPct().best());
            });
    row.put("water_l", look.litres().best());
    row.put("wat_lo", look.litres().low());
    row.put("wat_hi", look.litres().high());
    EvenRows.putLike(row, look);
    row.put("rank_dry", place(look.ranks().dry()));
    row.put("rank_wet", place(look.ranks().wet()));
    row.put("rank_wat", place(look.ranks().litres()));
    row.put("rank_even", place(look.ranks().uneven()));
    Stream.of(look.ranks().uneven(), look.ranks().dry())
        .flatMap(Optional::stream)
        .findFirst()
        .ifPresent(r -> row.put("n_like", r.of()));
    row.put("note", String.join("; ", notes(look)));
    return Layers.COURSE.row(row);
  }

  private static Integer place(Optional<Rank> rank) {
    return rank.map(Rank::place).orElse(null);
  }

  /** What is missing of a green, with the remedy. */
  private static List<String> notes(GreenLook look) {
    List<String> notes = new ArrayList<>();
    if (look.outcome() instanceof Outcome.NoMap none) {
      notes.add("no map: " + none.why());
    } else if (look.outcome() instanceof Outcome.Mapped map
        && map.watering() instanceof Watering.NotWorkedOut not) {
      notes.add(not.why().toString());
    }
    return notes;
  }
}
