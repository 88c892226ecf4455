package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.alone;
import static org.mottle.engine.review.Verdicts.assertQuality;
import static org.mottle.engine.review.Verdicts.found;
import static org.mottle.engine.review.Verdicts.quality;

import org.junit.jupiter.api.Test;
import org.mottle.engine.survey.Reading;

/** Readings far from what was expected are doubted and used. */
class OddReadingsTest {
  /**
   * A quarter below what was expected is warned, a little above is not (common practice, no
   * source).
   */
  @Test
  void partialInsertionIsWarnedAndUsed() {
    for (long seed = 1; seed <= 20; seed++) {
      InventedVisit invented = new InventedVisit("G1", "S1", FULL, seed);
      invented.pct[7] = 16.2;
      invented.pct[12] = 22.7;
      ReviewedVisit visit = alone(invented);

      assertThat(quality(visit, 7))
          .as("16.2 %% among 21.6 %%, seed %d", seed)
          .isEqualTo(new Reading.Quality("Q04", "warn", true));
      assertThat(quality(visit, 12).code()).as("22.7 %%, seed %d", seed).isNotEqualTo("Q04");
      assertThat(found(visit, Rule.INSERTION).get(0).reason())
          .as("the words name the other cause")
          .contains("dry spot");
    }
  }

  @Test
  void pointsOfInterestAreThereBecauseTheyAreOdd() {
    for (long seed = 1; seed <= 20; seed++) {
      InventedVisit invented = new InventedVisit("G1", "S1", FULL, seed);
      invented.pct[7] = 16.2;
      invented.pct[12] = 31;
      invented.role[7] = Reading.Role.POINT_OF_INTEREST;
      invented.role[12] = Reading.Role.POINT_OF_INTEREST;
      ReviewedVisit visit = alone(invented);

      assertThat(quality(visit, 7).status()).as("seed %d", seed).isEqualTo("ok");
      assertThat(quality(visit, 12).status()).as("seed %d", seed).isEqualTo("ok");
    }
  }

  @Test
  void aHighReadingIsWarnedAndUsed() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    invented.pct[7] = 31;
    assertQuality(alone(invented), 7, Rule.HIGH, Severity.WARN);
  }
}
