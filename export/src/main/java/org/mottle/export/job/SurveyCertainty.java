package org.mottle.export.job;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.SmallestPatch;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.population.Finding;
import org.mottle.engine.population.StationRef;

/** How sure the map of a green and survey is, and what it could not have seen. */
final class SurveyCertainty {

  private SurveyCertainty() {}

  static void put(Map<String, Object> row, Outcome.Mapped map) {
    map.basis()
        .kriging()
        .ifPresent(
            k -> {
              row.put("n_real", k.realisations());
              row.put("pos_sd_m", k.positions().jitterM());
              row.put("shift_sd", k.positions().shiftM());
              k.populations().ifPresent(finding -> put(row, finding));
            });
    map.parts().marks().ifPresent(marks -> put(row, marks));
    map.parts().next().ifPresent(ranking -> NextRows.put(row, ranking));
    CalibrationFigures.of(List.of(map)).ifPresent(c -> CalibrationFigures.put(row, c));
  }

  private static void put(Map<String, Object> row, Marks marks) {
    SmallestPatch smallest = marks.smallest();
    row.put("spacing_m", smallest.spacingM());
    row.put("min_patch", smallest.areaM2());
    row.put("min_width", smallest.widthM());
    for (ExpectedGround e : marks.expected()) {
      String kind = e.kind() == ZoneClass.DRY ? "dry" : "wet";
      row.put(kind + "_exp", e.areaM2());
      row.put(kind + "_lo", e.areaLow());
      row.put(kind + "_hi", e.areaHigh());
    }
  }

  private static void put(Map<String, Object> row, Finding finding) {
    row.put(
        "pop",
        switch (finding.advice()) {
          case MAP_APART_AND_TEST -> "apart";
          case MAP_AS_ONE_AND_TEST -> "one; test";
          case MAP_AS_ONE -> "one";
        });
    row.put("pop_seen", finding.seen());
    row.put("pop_why", finding.why());
    row.put("pop_next", String.join("; ", finding.next()));
    row.put(
        "pop_core",
        finding.cores().stream().map(StationRef::name).collect(Collectors.joining(" ")));
  }
}
