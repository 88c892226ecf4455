package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.mottle.engine.review.InventedVisit.reviewed;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.alone;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mottle.engine.survey.Reading;

/**
 * What holds of any review: nothing extreme is left out, raw values stay, order changes nothing.
 */
class ReviewTest {
  @Test
  void aSoundVisitIsLeftAlone() {
    ReviewedVisit visit = alone(new InventedVisit("G1", "S1", FULL, 1));

    assertThat(visit.findings()).isEmpty();
    assertThat(visit.obstacle()).isEmpty();
    assertThat(visit.visit().readings())
        .allSatisfy(r -> assertThat(r.quality()).isEqualTo(new Reading.Quality("", "ok", true)));
  }

  /** Whatever is read, extreme values within what soil gives are never left out. */
  @Test
  void onlyWhatCannotBeIsRejected() {
    Set<Rule> mayReject =
        EnumSet.of(Rule.RANGE, Rule.UNITS, Rule.STUCK, Rule.WATER, Rule.RODS, Rule.COPY);
    for (long seed = 1; seed <= 25; seed++) {
      Reviewed reviewed = wild(seed);
      assertThat(reviewed.allFindings())
          .as("seed %d", seed)
          .allSatisfy(
              f ->
                  assertThat(f.severity() != Severity.REJECT || mayReject.contains(f.rule()))
                      .as(f.line())
                      .isTrue());
      for (ReviewedVisit visit : reviewed.visits()) {
        for (Reading r : visit.visit().readings()) {
          boolean rejected =
              visit.findings().stream()
                  .filter(f -> f.severity() == Severity.REJECT)
                  .flatMap(f -> f.readings().stream())
                  .anyMatch(g -> g.label().equals(r.label()));
          assertThat(r.quality().used()).as("seed %d, %s", seed, r.label()).isEqualTo(!rejected);
        }
      }
    }
  }

  private static Reviewed wild(long seed) {
    InventedVisit[] visits = wildVisits(seed);
    return reviewed(visits[0].controls(-0.8), visits);
  }

  private static InventedVisit[] wildVisits(long seed) {
    Random random = new Random(seed);
    InventedVisit[] visits = new InventedVisit[3];
    for (int k = 0; k < visits.length; k++) {
      int n = 5 + random.nextInt(30);
      visits[k] = new InventedVisit("G" + (1 + k / 2), "S" + (1 + k % 2), n, 10 * seed + k);
      visits[k].positionSdM = 3 * random.nextDouble();
      visits[k].clockAheadMin = random.nextInt(3) == 0 ? 60 : 0;
      for (int i = 0; i < n; i++) {
        if (random.nextInt(3) == 0) {
          visits[k].pct[i] = 1 + 48 * random.nextDouble();
        }
        if (random.nextInt(10) == 0) {
          visits[k].pct[i] = random.nextBoolean() ? 0.5 : 80;
        }
        visits[k].rodMm[i] = random.nextInt(15) == 0 ? 38 : 60;
        visits[k].operator[i] = random.nextInt(3) == 0 ? "B" : "A";
        if (random.nextInt(6) == 0) {
          visits[k].role[i] = Reading.Role.POINT_OF_INTEREST;
        }
      }
    }
    return visits;
  }

  @Test
  void rawValuesNeverChange() {
    for (long seed = 1; seed <= 10; seed++) {
      InventedVisit[] visits = wildVisits(seed);
      Reviewed reviewed = reviewed(visits[0].controls(-5), visits);
      for (int k = 0; k < visits.length; k++) {
        List<Reading> after = reviewed.visits().get(k).visit().readings();
        for (int i = 0; i < after.size(); i++) {
          Reading before = visits[k].reading(i);
          assertThat(after.get(i).moisture().rawPct()).isEqualTo(before.pct());
          assertThat(after.get(i).label()).isEqualTo(before.label());
          assertThat(after.get(i).position()).isEqualTo(before.position());
          assertThat(after.get(i).protocol()).isEqualTo(before.protocol());
        }
      }
    }
  }

  /** 5 % an hour over 9.5 minutes: 0.79 % at the last reading, none at the first. */
  @Test
  void dryingIsTakenOffTheAdjustedValueAndNoted() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    Reviewed reviewed = reviewed(invented.controls(-5), invented);
    List<Reading> after = reviewed.visits().get(0).visit().readings();
    double slope = reviewed.drying().get("S1").slopePctH();

    assertThat(slope).isCloseTo(-5, within(0.1));
    assertThat(after.get(0).moisture()).isEqualTo(Reading.Moisture.raw(invented.pct[0]));
    assertThat(after.get(19).pct()).isCloseTo(invented.pct[19] - slope * 9.5 / 60, within(1e-9));
    assertThat(after.get(19).moisture().note()).isEqualTo("drying +0.79");
    assertThat(reviewed.visits().get(0).errors())
        .singleElement()
        .satisfies(e -> assertThat(e.what()).isEqualTo("drying"));
  }

  @Test
  void theOrderOfVisitsChangesNothing() {
    for (long seed = 1; seed <= 20; seed++) {
      List<InventedVisit> order = new ArrayList<>(List.of(wildVisits(seed)));
      List<Reading> controls = order.get(0).controls(-5);
      Reviewed one = reviewed(controls, order.toArray(InventedVisit[]::new));
      Collections.reverse(order);
      Reviewed other = reviewed(controls, order.toArray(InventedVisit[]::new));

      for (ReviewedVisit visit : one.visits()) {
        ReviewedVisit same =
            other.visits().stream()
                .filter(v -> v.visit().label().equals(visit.visit().label()))
                .findFirst()
                .orElseThrow();
        assertThat(same.grade()).as("seed %d", seed).isEqualTo(visit.grade());
        assertThat(same.findings().stream().map(Finding::line))
            .as("seed %d", seed)
            .containsExactlyElementsOf(visit.findings().stream().map(Finding::line).toList());
        for (int i = 0; i < visit.visit().readings().size(); i++) {
          Reading a = visit.visit().readings().get(i);
          Reading b = same.visit().readings().get(i);
          assertThat(b.quality()).isEqualTo(a.quality());
          assertThat(b.pct()).isCloseTo(a.pct(), within(1e-9));
        }
      }
    }
  }
}
