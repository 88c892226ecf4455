package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.InventedVisit.reviewed;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.alone;
import static org.mottle.engine.review.Verdicts.assertQuality;
import static org.mottle.engine.review.Verdicts.found;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the protocol record gives away: water, rods, clocks. */
class RecordChecksTest {
  @Test
  void waterJustBefore() {
    assertWater(0.7, Severity.REJECT);
    assertWater(0.99, Severity.REJECT);
    assertWater(1, Severity.WARN);
    assertWater(5, Severity.WARN);
    InventedVisit dry = new InventedVisit("G1", "S1", FULL, 1);
    dry.irrigationH = 6;
    assertThat(found(alone(dry), Rule.WATER)).isEmpty();
  }

  private static void assertWater(double hours, Severity how) {
    InventedVisit rained = new InventedVisit("G1", "S1", FULL, 1);
    rained.rainH = hours;
    InventedVisit irrigated = new InventedVisit("G1", "S1", FULL, 1);
    irrigated.irrigationH = hours;
    for (InventedVisit invented : List.of(rained, irrigated)) {
      ReviewedVisit visit = alone(invented);
      assertThat(found(visit, Rule.WATER))
          .as("%s h", hours)
          .singleElement()
          .satisfies(f -> assertThat(f.severity()).isEqualTo(how));
      assertThat(visit.obstacle().isPresent()).isEqualTo(how == Severity.REJECT);
      // the table that is handed on must not bring a refused visit back
      assertThat(visit.visit().readings())
          .allSatisfy(r -> assertThat(r.quality().used()).isEqualTo(how != Severity.REJECT));
    }
  }

  @Test
  void unrecordedConditionsAreTold() {
    InventedVisit without = new InventedVisit("G1", "S1", FULL, 1);
    without.recorded = false;
    InventedVisit empty = new InventedVisit("G1", "S1", FULL, 1);
    empty.rainH = Double.NaN;
    for (InventedVisit v : List.of(without, empty)) {
      assertThat(found(alone(v), Rule.CONDITIONS))
          .singleElement()
          .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.NOTE));
    }
  }

  @Test
  void otherRodsInAVisitAreRejected() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    invented.rodMm[4] = 38;
    invented.rodMm[11] = 38;
    ReviewedVisit visit = alone(invented);

    assertQuality(visit, 4, Rule.RODS, Severity.REJECT);
    assertQuality(visit, 11, Rule.RODS, Severity.REJECT);
    assertThat(found(visit, Rule.RODS))
        .singleElement()
        .satisfies(
            f ->
                assertThat(f.reason())
                    .isEqualTo("stations 5, 12: rods of 38 mm among rods of 60 mm"));
    assertThat(visit.obstacle()).isEmpty();
  }

  @Test
  void aVisitOfOtherRodsIsNotMapped() {
    InventedVisit a = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit b = new InventedVisit("G1", "S2", FULL, 2);
    InventedVisit c = new InventedVisit("G1", "S3", FULL, 3);
    Arrays.fill(c.rodMm, Double.NaN);
    c.conditionsRodMm = 38;
    Reviewed reviewed = reviewed(a, b, c);

    assertThat(reviewed.visits().get(0).obstacle()).isEmpty();
    assertThat(reviewed.visits().get(1).obstacle()).isEmpty();
    assertThat(reviewed.visits().get(2).obstacle())
        .hasValueSatisfying(o -> assertThat(o.reason()).contains("38 mm").contains("60 mm"));
  }

  @Test
  void aClockOneHourAheadIsNamed() {
    InventedVisit a = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit b = new InventedVisit("G2", "S1", FULL, 2);
    a.clockAheadMin = 60;
    b.clockAheadMin = 60;
    Reviewed reviewed = reviewed(a, b);

    assertThat(reviewed.findings().stream().filter(f -> f.rule() == Rule.CLOCK))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.severity()).isEqualTo(Severity.WARN);
              assertThat(f.reason())
                  .startsWith("the logger's clock is about 60 minutes ahead of the times on record")
                  .endsWith("as with summer time or another time zone");
            });
    assertThat(reviewed.visits()).allSatisfy(v -> assertThat(found(v, Rule.CLOCK)).isEmpty());
    assertThat(reviewed.visits().get(0).visit().readings().get(0).protocol().time())
        .as("times stay as logged")
        .isEqualTo(a.time(0));
  }

  @Test
  void oneVisitOutOfStepIsToldOfThatVisit() {
    InventedVisit[] visits = new InventedVisit[3];
    for (int k = 0; k < 3; k++) {
      visits[k] = new InventedVisit("G" + (k + 1), "S1", FULL, k + 1);
    }
    visits[1].clockAheadMin = -24 * 60;
    Reviewed reviewed = reviewed(visits);

    assertThat(reviewed.findings()).noneMatch(f -> f.rule() == Rule.CLOCK);
    assertThat(found(reviewed.visits().get(0), Rule.CLOCK)).isEmpty();
    assertThat(found(reviewed.visits().get(1), Rule.CLOCK))
        .singleElement()
        .satisfies(f -> assertThat(f.reason()).contains("24.0 hours before"));
  }
}
