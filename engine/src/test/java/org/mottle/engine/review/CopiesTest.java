package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.InventedVisit.reviewed;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.assertQuality;
import static org.mottle.engine.review.Verdicts.found;
import static org.mottle.engine.review.Verdicts.quality;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A file handed in twice is found by its times and values, and the first is kept. */
class CopiesTest {
  @Test
  void copiesAreRejectedAndTheFirstIsKept() {
    InventedVisit first = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit copy = new InventedVisit("G1", "S2", FULL, 1);
    Reviewed reviewed = reviewed(first, copy);

    assertThat(found(reviewed.visits().get(0), Rule.COPY)).isEmpty();
    assertThat(found(reviewed.visits().get(1), Rule.COPY))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.readings()).hasSize(FULL);
              assertThat(f.reason()).startsWith("20 readings of green G1, S1 are here a second");
            });
    for (int i = 0; i < FULL; i++) {
      assertThat(quality(reviewed.visits().get(0), i).used()).isTrue();
      assertQuality(reviewed.visits().get(1), i, Rule.COPY, Severity.REJECT);
    }
  }

  @Test
  void withoutTimesOnlyWholeVisitsAreCopies() {
    InventedVisit first = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit copy = new InventedVisit("G2", "S2", FULL, 1);
    InventedVisit near = new InventedVisit("G3", "S3", FULL, 1);
    near.pct[19] += 0.1;
    for (InventedVisit v : List.of(first, copy, near)) {
      v.timed = false;
    }
    Reviewed reviewed = reviewed(first, copy, near);

    assertThat(found(reviewed.visits().get(0), Rule.COPY)).isEmpty();
    assertThat(found(reviewed.visits().get(1), Rule.COPY)).hasSize(1);
    assertThat(found(reviewed.visits().get(2), Rule.COPY)).isEmpty();
  }

  @Test
  void sameValuesAtAnotherTimeAreNoCopies() {
    InventedVisit first = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit second = new InventedVisit("G1", "S2", FULL, 1);
    second.clockAheadMin = 24 * 60;
    second.pct[19] += 0.1;
    assertThat(found(reviewed(first, second).visits().get(1), Rule.COPY)).isEmpty();
  }
}
