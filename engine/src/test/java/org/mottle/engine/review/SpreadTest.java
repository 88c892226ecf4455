package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.alone;
import static org.mottle.engine.review.Verdicts.found;

import org.junit.jupiter.api.Test;

/** How many places were read, and how they lie. */
class SpreadTest {
  @Test
  void stationsInTheFrontThirdLeaveGroundUnspokenFor() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < FULL; i++) {
      invented.y[i] = 1 + 1.7 * (i / 5);
    }
    ReviewedVisit visit = alone(invented);

    assertThat(found(visit, Rule.SPREAD))
        .singleElement()
        .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.WARN));
    assertThat(visit.grade().letter()).isEqualTo(Grade.Letter.C);
    assertThat(visit.obstacle()).isEmpty();
  }

  @Test
  void fewStationsMakeASummary() {
    assertThat(found(alone(new InventedVisit("G1", "S1", 7, 1)), Rule.FEW))
        .singleElement()
        .satisfies(f -> assertThat(f.reason()).isEqualTo("7 places read: a summary, not a map"));
    assertThat(found(alone(new InventedVisit("G1", "S1", 8, 1)), Rule.FEW)).isEmpty();
    InventedVisit pairs = new InventedVisit("G1", "S1", 8, 1);
    pairs.x[1] = pairs.x[0] + 0.5;
    pairs.y[1] = pairs.y[0];
    assertThat(found(alone(pairs), Rule.FEW)).as("a close pair is one place").hasSize(1);
  }
}
