package org.mottle.export.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Reading.Role;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.PlansReader;

class StationTableTest {
  @TempDir Path folder;

  @Test
  void readsBackAsItWas() throws Exception {
    GreenPlan plain = HandMade.plan("G1", "Alder", 18, 2);
    GreenPlan odd = HandMade.plan("7, \"old\"", "", 8, 0);
    String csv = StationTable.csv(List.of(plain, odd), new Degrees(HandMade.CRS));
    Path file = Files.writeString(folder.resolve("stations.csv"), csv);
    List<StationPlan> read =
        PlansReader.read(file.toString(), InputOptions.NONE.withCrs(HandMade.CRS), HandMade.CRS);
    assertThat(read).extracting(StationPlan::greenId).containsExactly("G1", "7, \"old\"");
    for (int i = 0; i < 2; i++) {
      List<PlannedStation> wanted = (i == 0 ? plain : odd).plan().stations();
      List<PlannedStation> found = read.get(i).stations();
      assertThat(found).hasSameSizeAs(wanted);
      for (int k = 0; k < wanted.size(); k++) {
        PlannedStation a = wanted.get(k);
        PlannedStation b = found.get(k);
        assertThat(b.id()).isEqualTo(a.id());
        assertThat(b.role()).isEqualTo(a.role());
        assertThat(b.insertions()).isEqualTo(a.insertions());
        assertThat(Math.hypot(a.x() - b.x(), a.y() - b.y())).isLessThan(0.001);
      }
    }
  }

  @Test
  void stepsByHand() {
    StationPlan plan =
        new StationPlan(
            "p",
            "G1",
            List.of(
                new PlannedStation("1", 0, 0, Role.PLAN, 1),
                new PlannedStation("2", 3, 4, Role.PLAN, 1),
                new PlannedStation("3", 3, 4, Role.PAIR, 1),
                new PlannedStation("4", 0, 4, Role.PLAN, 1)));
    GreenPlan green =
        new GreenPlan(
            HandMade.green("G1", ""),
            plan,
            "coverage",
            1,
            "",
            new Prospect(Double.NaN, "", Double.NaN, "", List.of()));
    assertThat(green.steps())
        .extracting(GreenPlan.Step::words)
        .containsExactly("start", "5.0 m 037°", "stay", "3.0 m 270°");
  }
}
