package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.alone;
import static org.mottle.engine.review.Verdicts.assertQuality;
import static org.mottle.engine.review.Verdicts.found;
import static org.mottle.engine.review.Verdicts.quality;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;

/** Values that no soil gives, fractions, a display that stands still; limits at their edge. */
class ValueChecksTest {
  @Test
  void airIsRejectedBelowOnePerCent() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    invented.pct[3] = 0.9;
    invented.pct[7] = 1.0;
    ReviewedVisit visit = alone(invented);

    assertQuality(visit, 3, Rule.RANGE, Severity.REJECT);
    assertThat(quality(visit, 7).used()).as("1.0 %% is dry, not air").isTrue();
    assertThat(found(visit, Rule.RANGE))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.reason()).isEqualTo("station 4: 0.9 % is what a probe reads in air");
              assertThat(f.readings()).containsExactly(invented.reading(3));
              assertThat(f.line()).startsWith("S1, green G1: Q01 reject: station 4");
            });
    assertThat(visit.obstacle()).as("one reading does not stop a map").isEmpty();
  }

  /**
   * Limits: sand 45 + 5, soil 52 + 5, else the pores on record + 5 (common practice, no source).
   */
  @Test
  void noMoreWaterThanPores() {
    assertPores("sand", Double.NaN, 50);
    assertPores("Sand over gravel", Double.NaN, 50);
    assertPores("pushup", Double.NaN, 57);
    assertPores("", Double.NaN, 57);
    assertPores("sand", 38, 43);
  }

  private static void assertPores(String build, double porosity, double limit) {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    invented.build = build;
    invented.porosityPct = porosity;
    invented.pct[3] = limit;
    invented.pct[7] = limit + 0.1;
    ReviewedVisit visit = alone(invented);

    assertThat(quality(visit, 3).used()).as("%s at the limit", build).isTrue();
    assertQuality(visit, 7, Rule.RANGE, Severity.REJECT);
  }

  @Test
  void fractionsKeepAVisitFromBeingMapped() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < FULL; i++) {
      invented.pct[i] /= 100;
    }
    ReviewedVisit visit = alone(invented);

    assertThat(found(visit, Rule.UNITS))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.severity()).isEqualTo(Severity.REJECT);
              assertThat(f.reason()).startsWith("all 20 values are below 1 (0.");
              assertThat(f.remedy()).contains("by 100").contains("unit: percent");
            });
    assertThat(found(visit, Rule.RANGE)).as("told once, not for each reading").isEmpty();
    assertThat(visit.obstacle()).isPresent();
    assertThat(visit.grade().letter()).isEqualTo(Grade.Letter.D);
    assertThat(visit.visit().readings()).extracting(Reading::pct).allMatch(v -> v < 1);
  }

  /** Then every one is what a probe reads in air, which the remedy is not to promise away. */
  @Test
  void whereTheUnitIsSaidNobodyIsAsked() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < FULL; i++) {
      invented.pct[i] /= 100;
    }
    Reviewed reviewed =
        Review.of(
            new FieldRecord(List.of(invented.visit()), List.of(), List.of(), List.of()),
            ReviewSettings.DEFAULT.withUnitSaid(true),
            Progress.NONE);
    ReviewedVisit visit = reviewed.visits().get(0);
    assertThat(found(visit, Rule.UNITS)).isEmpty();
    assertThat(found(visit, Rule.RANGE)).hasSize(FULL);
  }

  @Test
  void aFewValuesBelowOneAreAirNotFractions() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < 4; i++) {
      invented.pct[i] = 0.2 + 0.1 * i;
    }
    ReviewedVisit visit = alone(invented);

    assertThat(found(visit, Rule.UNITS)).isEmpty();
    assertThat(found(visit, Rule.RANGE)).hasSize(4);
  }

  @Test
  void threeAlikeAreDoubtedAndFourRejected() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    Arrays.fill(invented.pct, 2, 5, 21.55);
    Arrays.fill(invented.pct, 9, 13, 21.65);
    Arrays.fill(invented.pct, 16, 18, 21.75);
    ReviewedVisit visit = alone(invented);

    for (int i = 2; i < 5; i++) {
      assertQuality(visit, i, Rule.STUCK, Severity.WARN);
    }
    for (int i = 9; i < 13; i++) {
      assertQuality(visit, i, Rule.STUCK, Severity.REJECT);
    }
    assertThat(quality(visit, 16).code()).as("two alike are chance").isEmpty();
    assertThat(found(visit, Rule.STUCK))
        .extracting(f -> f.readings().size())
        .containsExactlyInAnyOrder(3, 4);
  }

  @Test
  void alikeOnlyInARowCounts() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < FULL; i += 2) {
      invented.pct[i] = 21.55;
    }
    assertThat(found(alone(invented), Rule.STUCK)).isEmpty();
  }
}
