package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.InventedVisit.reviewed;

import java.util.List;
import org.mottle.engine.survey.Reading;

/** What a review said of an invented visit, for tests. */
final class Verdicts {
  static final int FULL = 20;

  private Verdicts() {}

  static List<Finding> found(ReviewedVisit visit, Rule rule) {
    return visit.findings().stream().filter(f -> f.rule() == rule).toList();
  }

  static Reading.Quality quality(ReviewedVisit visit, int i) {
    return visit.visit().readings().get(i).quality();
  }

  static ReviewedVisit alone(InventedVisit visit) {
    return reviewed(visit).visits().get(0);
  }

  static void assertQuality(ReviewedVisit visit, int i, Rule rule, Severity how) {
    assertThat(quality(visit, i))
        .as("station %d", i + 1)
        .isEqualTo(new Reading.Quality(rule.code(), how.label(), how != Severity.REJECT));
  }
}
