package org.mottle.engine.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.WateringSettings.Outlook;

class WateringTest {
  private static final RootZone SAND = new RootZone("sand", "", 120, 26, 10, 42);
  private static final RootZone NOT_ANCHORED =
      new RootZone("sand", "", 120, Double.NaN, Double.NaN, Double.NaN);
  private static final WateringSettings DEFAULTS = WateringSettings.defaults();

  private static CoveredGround ground(GreenCells cells, double width, double height) {
    return CoveredGround.of(cells, box(width, height));
  }

  private static Geometry box(double width, double height) {
    return new GeometryFactory().toGeometry(new Envelope(0, width, 0, height));
  }

  private static double[] even(GreenCells cells, double pct) {
    double[] values = new double[cells.neededCount()];
    Arrays.fill(values, pct);
    return values;
  }

  /** Arithmetic: 4 % over 100 mm is 4 mm, on 25 m² 100 L; a tenth is lost on the way. */
  @Test
  void fourPerCentOverAHundredMillimetresOnTwentyFiveSquareMetres() {
    GreenCells cells = GreenCells.of(box(5, 5), 0.5);
    Deficit deficit = new Deficit(18, 100, 26, 0, 6);
    WaterMeter meter = WaterMeter.of(ground(cells, 5, 5), deficit, 0.9, 1);
    meter.take(0, even(cells, 14));
    WaterWanted wanted = meter.wanted();
    assertThat(wanted.depthMm().best()).isCloseTo(4, within(1e-9));
    assertThat(wanted.litres().best()).isCloseTo(100 / 0.9, within(1e-9));
    assertThat(wanted.passes()).isEqualTo(1);
    assertThat(DEFAULTS.withFlow(25).minutes(100)).isEqualTo(4);
    assertThat(DEFAULTS.minutes(100)).isNaN();
  }

  /** Of the validation catalogue, section 8: (0.24 - 0.17) · 150 mm = 10.5 mm. */
  @Test
  void deficitOfTheCatalogue() {
    assertThat(new Deficit(24, 150, Double.NaN, 0, 99).depthMm(17)).isCloseTo(10.5, within(1e-9));
  }

  @Test
  void theTargetLiesInTheBandAndNeverAboveFieldCapacity() {
    TargetBand band = TargetBand.of(15.6, 20.4);
    assertThat(Deficit.of(SAND, 120, band, DEFAULTS).targetPct()).isCloseTo(17.2, within(1e-9));
    assertThat(Deficit.of(SAND, 120, TargetBand.of(25, 31), DEFAULTS).targetPct()).isEqualTo(26);
    assertThat(Deficit.of(NOT_ANCHORED, 120, TargetBand.of(25, 31), DEFAULTS).targetPct())
        .isCloseTo(27, within(1e-9));
  }

  @Test
  void weatherIsNettedOffAndRoomIsKept() {
    TargetBand band = TargetBand.of(18, 21);
    Deficit plain = Deficit.of(SAND, 100, band, DEFAULTS);
    Deficit dryDay = Deficit.of(SAND, 100, band, DEFAULTS.withOutlook(new Outlook(4, 0)));
    Deficit rain = Deficit.of(SAND, 100, band, DEFAULTS.withOutlook(new Outlook(4, 6)));
    assertThat(plain.depthMm(16)).isCloseTo(3, within(1e-9));
    assertThat(dryDay.depthMm(16)).isCloseTo(7, within(1e-9));
    assertThat(rain.depthMm(16)).isCloseTo(1, within(1e-9));
    assertThat(rain.depthMm(18)).isZero();
    // at 24 % only 2 mm fit under field capacity, whatever the outlook
    Deficit drought = Deficit.of(SAND, 100, band, DEFAULTS.withOutlook(new Outlook(30, 0)));
    assertThat(drought.depthMm(24)).isCloseTo(2, within(1e-9));
    assertThat(drought.depthMm(27)).isZero();
  }

  @Test
  void moreThanAPassIsToldAndNotGivenAtOnce() {
    GreenCells cells = GreenCells.of(box(5, 5), 0.5);
    WaterMeter meter = WaterMeter.of(ground(cells, 5, 5), new Deficit(20, 150, 26, 0, 6), 1, 1);
    meter.take(0, even(cells, 10));
    assertThat(meter.wanted().depthMm().best()).isCloseTo(15, within(1e-9));
    assertThat(meter.wanted().litres().best()).isCloseTo(150, within(1e-9));
    assertThat(meter.wanted().passes()).isEqualTo(3);
  }

  @Test
  void depthFallsWithMoistureAndNeverBelowZero() {
    Deficit deficit = new Deficit(18, 120, 26, 1.5, 6);
    double before = Double.POSITIVE_INFINITY;
    for (double v = 0; v <= 50; v += 0.25) {
      double depth = deficit.depthMm(v);
      assertThat(depth).isBetween(0.0, before);
      assertThat(deficit.passMm(depth)).isEqualTo(Math.min(6, depth));
      before = depth;
    }
  }

  @Test
  void partsOfTheGroundSumUpAndGroundAboveALimitIsLeftOut() {
    GreenCells cells = GreenCells.of(box(10, 4), 0.5);
    double[] values = Arrays.stream(cells.neededX()).map(x -> x < 5 ? 12 : 17).toArray();
    Deficit deficit = new Deficit(18, 100, 26, 0, 20);
    WaterMeter all = WaterMeter.of(ground(cells, 10, 4), deficit, 0.8, 1);
    WaterMeter west = WaterMeter.of(ground(cells, 5, 4), deficit, 0.8, 1);
    WaterMeter dry = WaterMeter.below(15, ground(cells, 10, 4), deficit, 0.8, 1);
    for (WaterMeter meter : new WaterMeter[] {all, west, dry}) {
      meter.take(0, values);
    }
    assertThat(west.wanted().litres().best()).isCloseTo(6 * 20 / 0.8, within(1e-9));
    assertThat(dry.wanted().litres().best()).isCloseTo(6 * 20 / 0.8, within(1e-9));
    assertThat(all.wanted().litres().best()).isCloseTo((6 * 20 + 20) / 0.8, within(1e-9));
  }

  @Test
  void nothingWantedIsNoPass() {
    GreenCells cells = GreenCells.of(box(5, 5), 0.5);
    WaterMeter meter = WaterMeter.of(ground(cells, 5, 5), new Deficit(18, 100, 26, 0, 6), 1, 1);
    meter.take(0, even(cells, 22));
    assertThat(meter.wanted().passes()).isZero();
    assertThat(meter.wanted().litres().best()).isZero();
  }

  @Test
  void settingsThatMakeNoSenseAreRefused() {
    assertThatThrownBy(() -> settings(1.2, 0.9, 6)).hasMessageContaining("target share");
    assertThatThrownBy(() -> settings(0.3, 0, 6)).hasMessageContaining("efficiency");
    assertThatThrownBy(() -> settings(0.3, 0.9, 0)).hasMessageContaining("pass");
    assertThatThrownBy(() -> new Outlook(-1, 0)).hasMessageContaining("turf");
  }

  private static WateringSettings settings(double share, double efficiency, double capMm) {
    return new WateringSettings(
        share, efficiency, capMm, 20, 100, TurfCoefficient.COOL_SEASON, 0.9, Outlook.NONE);
  }

  /**
   * FAO-56 (Allen et al. 1998), equations 82 and 83, p = 0.40 of cool-season turf at 5 mm a day.
   */
  @Test
  void waterOfTheRootZone() {
    RootWater water = RootWater.of(SAND, new Interval(17, 18, 19), DEFAULTS, 5 / 0.9).orElseThrow();
    assertThat(water.totalMm()).isCloseTo(0.16 * 120, within(1e-9));
    assertThat(water.readilyMm()).isCloseTo(0.4 * 0.16 * 120, within(1e-9));
    assertThat(water.depletionMm().best()).isCloseTo(9.6, within(1e-9));
    assertThat(water.depletionMm().low()).isCloseTo(8.4, within(1e-9));
    assertThat(water.depletionMm().high()).isCloseTo(10.8, within(1e-9));
    assertThat(RootWater.of(NOT_ANCHORED, new Interval(17, 18, 19), DEFAULTS, 5)).isEmpty();
  }
}
