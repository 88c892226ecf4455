package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.survey.Green;

/** Which figures come of which records. */
class CanAuditTest {
  private static final double NONE = Double.NaN;
  private static final Green GREEN =
      Green.of("G", new GeometryFactory().toGeometry(new Envelope(0, 20, 0, 20)));
  private static final AuditSettings SETTINGS =
      new AuditSettings(LowQuarter.UP, 200, 1, Optional.of(new WaterNeed(5, 0.9, 0)));

  private static List<CatchCan> cans(Function<Integer, CatchCan.Measure> measure) {
    List<CatchCan> cans = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      double x = 2 + 3.2 * (i % 6);
      double y = 2 + 5 * Math.floorDiv(i, 6);
      cans.add(new CatchCan("c" + i, "G", "", x, y, measure.apply(i), 1.4));
    }
    return cans;
  }

  private static double ml(int i) {
    return 30 + i;
  }

  private static AreaAudit audit(List<CatchCan> cans) {
    return audit(cans, Optional.of(GREEN), List.of(head("a", 400)));
  }

  private static AreaAudit audit(List<CatchCan> cans, Optional<Green> green, List<Head> heads) {
    return new CanAudit(SETTINGS).of(new AuditArea("G", "", cans, green, heads));
  }

  private static Head head(String id, double kpa) {
    return new Head(id, "G", "", 0, 0, 17, 0, 90, 12, kpa);
  }

  private static List<String> missing(AreaAudit audit) {
    return audit.told().missing().stream().map(Missing::figure).toList();
  }

  private static List<Caution.Kind> cautions(AreaAudit audit) {
    return audit.told().cautions().stream().map(Caution::kind).toList();
  }

  @Test
  void everythingRecordedEverythingGiven() {
    AreaAudit audit = audit(cans(i -> new CatchCan.Measure(ml(i), 95, 30)));
    assertThat(missing(audit)).isEmpty();
    // mean catch 41.5 ml: 10 · 41.5 / 95 mm in half an hour
    assertThat(audit.applied().depthMm()).isCloseTo(415 / 95.0, within(1e-12));
    assertThat(audit.applied().rateMmH()).isCloseTo(830 / 95.0, within(1e-12));
    double du = 32.5 / 41.5; // lowest six: 30 to 35
    assertThat(audit.uniformity().orElseThrow().figures().duLowQuarter())
        .isCloseTo(du, within(1e-12));
    assertThat(audit.runTime().minutes())
        .isCloseTo(60 * 4.5 / (0.386 + 0.614 * du) / (830 / 95.0), within(1e-9));
    assertThat(audit.scheduling()).allMatch(s -> s.value() > 1);
    assertThat(cautions(audit))
        .containsExactly(Caution.Kind.WINDOW, Caution.Kind.HEAD_FIRST, Caution.Kind.RUN_TIME);
  }

  @Test
  void withoutMouthsOnlyTheRatios() {
    AreaAudit with = audit(cans(i -> new CatchCan.Measure(ml(i), 95, 30)));
    AreaAudit audit = audit(cans(i -> new CatchCan.Measure(ml(i), NONE, 30)));
    assertThat(missing(audit)).containsExactly("mm", "mm_h", "run_min");
    assertThat(audit.told().missing().get(0).toString())
        .contains("24 of 24 cans")
        .contains("10 ml / cm²");
    assertThat(audit.applied().depthMm()).isNaN();
    assertThat(audit.applied().rateMmH()).isNaN();
    assertThat(audit.values().unit()).isEqualTo("ml");
    assertThat(audit.uniformity().orElseThrow().figures().duLowQuarter())
        .isCloseTo(with.uniformity().orElseThrow().figures().duLowQuarter(), within(1e-12));
    assertThat(audit.scheduling().get(0).value())
        .isCloseTo(with.scheduling().get(0).value(), within(1e-9));
    assertThat(cautions(audit)).contains(Caution.Kind.ALIKE);
  }

  @Test
  void someMouthsWithoutAndTheOthersDifferent() {
    AreaAudit audit =
        audit(cans(i -> new CatchCan.Measure(ml(i), i == 3 ? NONE : i < 9 ? 95 : 80, 30)));
    assertThat(missing(audit))
        .containsExactly(
            "du_lq", "cu", "cv_pct", "rtm", "mm", "mm_h", "run_min", "sc1", "sc2", "sc5");
    assertThat(audit.told().missing().get(0).toString())
        .contains("1 of 24 cans have no mouth area")
        .contains("80, 95 cm²");
    assertThat(audit.uniformity()).isEmpty();
  }

  @Test
  void mixedMouthsAreComparedByDepth() {
    AreaAudit audit =
        audit(cans(i -> new CatchCan.Measure(i % 2 == 0 ? 95 : 190, i % 2 == 0 ? 95 : 190, 30)));
    assertThat(audit.uniformity().orElseThrow().figures().duLowQuarter())
        .isCloseTo(1, within(1e-12));
    assertThat(cautions(audit)).contains(Caution.Kind.MOUTHS);
  }

  @Test
  void cansOfTwoRunsAreComparedByRate() {
    AreaAudit audit =
        audit(cans(i -> new CatchCan.Measure(i % 2 == 0 ? 40 : 80, 95, i % 2 == 0 ? 15 : 30)));
    assertThat(audit.values().unit()).isEqualTo("mm/h");
    assertThat(audit.uniformity().orElseThrow().figures().cuPct()).isCloseTo(100, within(1e-9));
    assertThat(cautions(audit)).contains(Caution.Kind.RUNS);
  }

  @Test
  void withoutMinutesNoRate() {
    AreaAudit audit = audit(cans(i -> new CatchCan.Measure(ml(i), 95, NONE)));
    assertThat(missing(audit)).containsExactly("mm_h", "run_min");
    assertThat(audit.applied().depthMm()).isCloseTo(415 / 95.0, within(1e-12));
    assertThat(audit.runTime().multiplier()).isGreaterThan(1);
  }

  @Test
  void withoutPlacesOrOutlineNoSchedulingCoefficient() {
    List<CatchCan> cans = cans(i -> new CatchCan.Measure(ml(i), 95, 30));
    AreaAudit noOutline = audit(cans, Optional.empty(), List.of());
    assertThat(missing(noOutline)).containsExactly("sc1", "sc2", "sc5");
    assertThat(noOutline.told().missing().get(0).toString()).contains("outline");
    List<CatchCan> one = new ArrayList<>(cans);
    one.set(5, new CatchCan("c5", "G", "", NONE, NONE, cans.get(5).measure(), 1.4));
    AreaAudit noPlace = audit(one);
    assertThat(missing(noPlace)).containsExactly("sc1", "sc2", "sc5");
    assertThat(noPlace.told().missing().get(0).toString()).contains("1 of 24 cans have no place");
    assertThat(noPlace.uniformity()).isPresent();
  }

  @Test
  void emptyCans() {
    AreaAudit audit = audit(cans(i -> new CatchCan.Measure(0, 95, 30)));
    assertThat(missing(audit)).contains("du_lq", "cu", "rtm", "sc1", "run_min");
    assertThat(audit.told().missing().get(0).toString()).contains("no can caught anything");
    assertThat(audit.applied().depthMm()).isZero();
  }

  @Test
  void windPressureFewCansAndShortRuns() {
    List<CatchCan> windy = new ArrayList<>();
    for (CatchCan c : cans(i -> new CatchCan.Measure(ml(i), 95, 6)).subList(0, 12)) {
      windy.add(new CatchCan(c.id(), "G", "", c.x(), c.y(), c.measure(), 3.5));
    }
    AreaAudit audit = audit(windy, Optional.of(GREEN), List.of(head("a", 400), head("b", 300)));
    assertThat(cautions(audit))
        .contains(
            Caution.Kind.WIND,
            Caution.Kind.PRESSURE,
            Caution.Kind.FEW_CANS,
            Caution.Kind.SHORT_RUN);
    String all = String.join("\n", audit.told().cautions().stream().map(Caution::text).toList());
    // 300 and 400 kPa are 14 % from their mean of 350
    assertThat(all).contains("3.5 m/s").contains("14 %").contains("12 cans").contains("6.0 min");
    List<CatchCan> unknown = new ArrayList<>();
    for (CatchCan c : cans(i -> new CatchCan.Measure(ml(i), 95, 30))) {
      unknown.add(new CatchCan(c.id(), "G", "", c.x(), c.y(), c.measure(), NONE));
    }
    AreaAudit silent = audit(unknown, Optional.of(GREEN), List.of(head("a", NONE)));
    assertThat(cautions(silent)).contains(Caution.Kind.WIND, Caution.Kind.PRESSURE);
    assertThat(silent.told().cautions().get(0).text()).contains("wind is not recorded");
  }

  @Test
  void cansFarFromTheGreenAreNamed() {
    List<CatchCan> cans = cans(i -> new CatchCan.Measure(ml(i), 95, 30));
    CatchCan first = cans.get(0);
    cans.set(0, new CatchCan("far", "G", "", -8, 5, first.measure(), 1));
    assertThat(cautions(audit(cans))).contains(Caution.Kind.OUTSIDE);
    assertThat(cautions(audit(cans.subList(1, 24)))).doesNotContain(Caution.Kind.OUTSIDE);
  }

  @Test
  void theOrderOfTheCansDoesNotMatter() {
    List<CatchCan> cans = cans(i -> new CatchCan.Measure(20 + (i * 7) % 31, 95, 30));
    AreaAudit first = audit(cans);
    List<CatchCan> turned = new ArrayList<>(cans);
    Collections.shuffle(turned, new java.util.Random(4));
    AreaAudit again = audit(turned);
    assertThat(again.uniformity()).isEqualTo(first.uniformity());
    assertThat(again.scheduling()).isEqualTo(first.scheduling());
    assertThat(again.applied()).isEqualTo(first.applied());
    assertThat(again.runTime()).isEqualTo(first.runTime());
  }
}
