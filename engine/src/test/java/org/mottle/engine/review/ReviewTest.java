package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.mottle.engine.review.InventedVisit.reviewed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mottle.engine.survey.Reading;

/** The rules of the review on small invented visits. */
class ReviewTest {
  private static final int FULL = 20;

  private static List<Finding> of(ReviewedVisit visit, Rule rule) {
    return visit.findings().stream().filter(f -> f.rule() == rule).toList();
  }

  private static Reading.Quality quality(ReviewedVisit visit, int i) {
    return visit.visit().readings().get(i).quality();
  }

  private static ReviewedVisit alone(InventedVisit visit) {
    return reviewed(visit).visits().get(0);
  }

  private static void assertQuality(ReviewedVisit visit, int i, Rule rule, Severity how) {
    assertThat(quality(visit, i))
        .as("station %d", i + 1)
        .isEqualTo(new Reading.Quality(rule.code(), how.label(), how != Severity.REJECT));
  }

  @Test
  void aSoundVisitIsLeftAlone() {
    ReviewedVisit visit = alone(new InventedVisit("G1", "S1", FULL, 1));

    assertThat(visit.findings()).isEmpty();
    assertThat(visit.obstacle()).isEmpty();
    assertThat(visit.visit().readings())
        .allSatisfy(r -> assertThat(r.quality()).isEqualTo(new Reading.Quality("", "ok", true)));
  }

  @Test
  void airIsRejectedBelowOnePerCent() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    invented.pct[3] = 0.9;
    invented.pct[7] = 1.0;
    ReviewedVisit visit = alone(invented);

    assertQuality(visit, 3, Rule.RANGE, Severity.REJECT);
    assertThat(quality(visit, 7).used()).as("1.0 %% is dry, not air").isTrue();
    assertThat(of(visit, Rule.RANGE))
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

    assertThat(of(visit, Rule.UNITS))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.severity()).isEqualTo(Severity.REJECT);
              assertThat(f.reason()).startsWith("all 20 values are below 1 (0.");
              assertThat(f.remedy()).contains("by 100").contains("unit: percent");
            });
    assertThat(of(visit, Rule.RANGE)).as("told once, not for each reading").isEmpty();
    assertThat(visit.obstacle()).isPresent();
    assertThat(visit.grade().letter()).isEqualTo(Grade.Letter.D);
    assertThat(visit.visit().readings()).extracting(Reading::pct).allMatch(v -> v < 1);
  }

  @Test
  void aFewValuesBelowOneAreAirNotFractions() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < 4; i++) {
      invented.pct[i] = 0.2 + 0.1 * i;
    }
    ReviewedVisit visit = alone(invented);

    assertThat(of(visit, Rule.UNITS)).isEmpty();
    assertThat(of(visit, Rule.RANGE)).hasSize(4);
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
    assertThat(of(visit, Rule.STUCK))
        .extracting(f -> f.readings().size())
        .containsExactlyInAnyOrder(3, 4);
  }

  @Test
  void alikeOnlyInARowCounts() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < FULL; i += 2) {
      invented.pct[i] = 21.55;
    }
    assertThat(of(alone(invented), Rule.STUCK)).isEmpty();
  }

  @Test
  void copiesAreRejectedAndTheFirstIsKept() {
    InventedVisit first = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit copy = new InventedVisit("G1", "S2", FULL, 1);
    Reviewed reviewed = reviewed(first, copy);

    assertThat(of(reviewed.visits().get(0), Rule.COPY)).isEmpty();
    assertThat(of(reviewed.visits().get(1), Rule.COPY))
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

    assertThat(of(reviewed.visits().get(0), Rule.COPY)).isEmpty();
    assertThat(of(reviewed.visits().get(1), Rule.COPY)).hasSize(1);
    assertThat(of(reviewed.visits().get(2), Rule.COPY)).isEmpty();
  }

  @Test
  void sameValuesAtAnotherTimeAreNoCopies() {
    InventedVisit first = new InventedVisit("G1", "S1", FULL, 1);
    InventedVisit second = new InventedVisit("G1", "S2", FULL, 1);
    second.clockAheadMin = 24 * 60;
    second.pct[19] += 0.1;
    assertThat(of(reviewed(first, second).visits().get(1), Rule.COPY)).isEmpty();
  }

  @Test
  void waterJustBefore() {
    assertWater(0.7, Severity.REJECT);
    assertWater(0.99, Severity.REJECT);
    assertWater(1, Severity.WARN);
    assertWater(5, Severity.WARN);
    InventedVisit dry = new InventedVisit("G1", "S1", FULL, 1);
    dry.irrigationH = 6;
    assertThat(of(alone(dry), Rule.WATER)).isEmpty();
  }

  private static void assertWater(double hours, Severity how) {
    InventedVisit rained = new InventedVisit("G1", "S1", FULL, 1);
    rained.rainH = hours;
    InventedVisit irrigated = new InventedVisit("G1", "S1", FULL, 1);
    irrigated.irrigationH = hours;
    for (InventedVisit invented : List.of(rained, irrigated)) {
      ReviewedVisit visit = alone(invented);
      assertThat(of(visit, Rule.WATER))
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
      assertThat(of(alone(v), Rule.CONDITIONS))
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
    assertThat(of(visit, Rule.RODS))
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
    assertThat(reviewed.visits()).allSatisfy(v -> assertThat(of(v, Rule.CLOCK)).isEmpty());
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
    assertThat(of(reviewed.visits().get(0), Rule.CLOCK)).isEmpty();
    assertThat(of(reviewed.visits().get(1), Rule.CLOCK))
        .singleElement()
        .satisfies(f -> assertThat(f.reason()).contains("24.0 hours before"));
  }

  @Test
  void stationsInTheFrontThirdLeaveGroundUnspokenFor() {
    InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
    for (int i = 0; i < FULL; i++) {
      invented.y[i] = 1 + 1.7 * (i / 5);
    }
    ReviewedVisit visit = alone(invented);

    assertThat(of(visit, Rule.SPREAD))
        .singleElement()
        .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.WARN));
    assertThat(visit.grade().letter()).isEqualTo(Grade.Letter.C);
    assertThat(visit.obstacle()).isEmpty();
  }

  @Test
  void fewStationsMakeASummary() {
    assertThat(of(alone(new InventedVisit("G1", "S1", 7, 1)), Rule.FEW))
        .singleElement()
        .satisfies(f -> assertThat(f.reason()).isEqualTo("7 places read: a summary, not a map"));
    assertThat(of(alone(new InventedVisit("G1", "S1", 8, 1)), Rule.FEW)).isEmpty();
    InventedVisit pairs = new InventedVisit("G1", "S1", 8, 1);
    pairs.x[1] = pairs.x[0] + 0.5;
    pairs.y[1] = pairs.y[0];
    assertThat(of(alone(pairs), Rule.FEW)).as("a close pair is one place").hasSize(1);
  }

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
      assertThat(of(visit, Rule.INSERTION).get(0).reason())
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

  private static Grade grade(InventedVisit invented) {
    return reviewed(invented.controls(-0.1), invented).visits().get(0).grade();
  }

  @Test
  void gradesFollowTheNumberOfPlaces() {
    assertThat(grade(new InventedVisit("G1", "S1", 20, 1)))
        .isEqualTo(new Grade(Grade.Letter.A, List.of(), List.of()));
    InventedVisit sixteen = spread(16);
    assertThat(grade(sixteen).letter()).isEqualTo(Grade.Letter.A);
    assertThat(grade(spread(15)).letter()).isEqualTo(Grade.Letter.B);
    assertThat(grade(spread(12)).letter()).isEqualTo(Grade.Letter.B);
    assertThat(grade(spread(11)).letter()).isEqualTo(Grade.Letter.C);
    assertThat(grade(spread(8)).letter()).isEqualTo(Grade.Letter.C);
    assertThat(grade(spread(7)).letter()).isEqualTo(Grade.Letter.D);
    assertThat(grade(spread(7)).raise()).contains("read 16 places or more");
  }

  /** Stations of the grid taken out evenly, so that no ground is left without. */
  private static InventedVisit spread(int stations) {
    InventedVisit invented = new InventedVisit("G1", "S1", stations, 1);
    int across = (int) Math.ceil(Math.sqrt(stations * 1.25));
    int up = (stations + across - 1) / across;
    for (int i = 0; i < stations; i++) {
      int row = i / across;
      int inRow = row < up - 1 ? across : stations - across * (up - 1);
      invented.x[i] = 25.0 * (i % across + 0.5) / inRow;
      invented.y[i] = 20 * (row + 0.5) / up;
    }
    return invented;
  }

  @Test
  void gradesFollowThePositions() {
    double[] sd = {1, 1.1, 2.5, 2.6, 4, 4.1, Double.NaN};
    Grade.Letter[] letters = {
      Grade.Letter.A,
      Grade.Letter.B,
      Grade.Letter.B,
      Grade.Letter.C,
      Grade.Letter.C,
      Grade.Letter.D,
      Grade.Letter.C
    };
    for (int k = 0; k < sd.length; k++) {
      InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
      invented.positionSdM = sd[k];
      assertThat(grade(invented).letter()).as("%s m", sd[k]).isEqualTo(letters[k]);
    }
  }

  @Test
  void gradesFollowWhatIsNotKnownOrRejected() {
    InventedVisit sound = new InventedVisit("G1", "S1", FULL, 1);
    assertThat(alone(sound).grade().letter()).as("no control stations").isEqualTo(Grade.Letter.C);
    InventedVisit one = new InventedVisit("G1", "S1", FULL, 1);
    one.pct[7] = 0.5;
    assertThat(grade(one).letter()).as("5 %% rejected").isEqualTo(Grade.Letter.A);
    one.pct[12] = 0.6;
    assertThat(grade(one).letter()).as("10 %% rejected").isEqualTo(Grade.Letter.B);
    InventedVisit rain = new InventedVisit("G1", "S1", FULL, 1);
    rain.rainH = 5;
    assertThat(grade(rain).letter()).isEqualTo(Grade.Letter.B);
    InventedVisit chosen = new InventedVisit("G1", "S1", FULL, 1);
    Arrays.fill(chosen.role, Reading.Role.POINT_OF_INTEREST);
    assertThat(grade(chosen).letter()).isEqualTo(Grade.Letter.C);
    InventedVisit crews = new InventedVisit("G1", "S1", FULL, 1);
    Arrays.fill(crews.operator, 0, 5, "B");
    assertThat(grade(crews).letter()).as("operators share no station").isEqualTo(Grade.Letter.C);
  }
}
