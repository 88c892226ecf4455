package org.mottle.engine.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class AvailableWaterTest {

  @Test
  void theRowsOfTheCatalogue() throws IOException {
    List<double[]> rows = PublishedRows.of("fao56_taw.csv", 12);
    assertThat(rows).hasSize(3);
    for (double[] r : rows) {
      AvailableWater water = new AvailableWater(100 * r[0], 100 * r[1], 1000 * r[2]);
      double p = AvailableWater.depletionShare(r[3], r[4]);
      double taw = water.totalMm();
      assertThat(taw).isCloseTo(r[5], within(1e-9));
      assertThat(water.readilyMm(r[3])).isCloseTo(r[6], within(1e-9));
      assertThat(p).isCloseTo(r[7], within(1e-9));
      assertThat(water.readilyMm(p)).isCloseTo(r[8], within(1e-9));
      assertThat(water.stress(0.3 * taw, p)).isCloseTo(r[9], within(1e-9));
      assertThat(water.stress(0.6 * taw, p)).isCloseTo(r[10], within(1e-9));
      assertThat(water.stress(0.8 * taw, p)).isCloseTo(r[11], within(1e-9));
    }
  }

  /** FAO-56 (Allen et al. 1998), note of table 22: p is limited to 0.1 and 0.8. */
  @Test
  void theShareFallsWithDemandAndKeepsItsLimits() {
    assertThat(AvailableWater.depletionShare(0.4, 5)).isEqualTo(0.4);
    assertThat(AvailableWater.depletionShare(0.4, 20)).isEqualTo(0.1);
    assertThat(AvailableWater.depletionShare(0.7, 0)).isEqualTo(0.8);
    for (double etc = 0; etc < 20; etc += 0.5) {
      assertThat(AvailableWater.depletionShare(0.5, etc + 0.5))
          .isLessThanOrEqualTo(AvailableWater.depletionShare(0.5, etc));
    }
  }

  /** Seed 11: stress never rises as the soil dries, is 1 down to RAW and 0 at TAW. */
  @Test
  void stressFollowsTheDepletion() {
    SplittableRandom chance = new SplittableRandom(11);
    for (int k = 0; k < 200; k++) {
      double wp = chance.nextDouble(0, 20);
      AvailableWater water =
          new AvailableWater(wp + chance.nextDouble(1, 30), wp, chance.nextDouble(50, 400));
      double p = chance.nextDouble(0.1, 0.8);
      assertThat(water.stress(0.999 * water.readilyMm(p), p)).isEqualTo(1);
      assertThat(water.stress(water.totalMm(), p)).isZero();
      double before = 1;
      for (double pct = water.fieldCapacityPct() + 5; pct > wp - 5; pct -= 0.5) {
        double stress = water.stress(water.depletionMm(pct), p);
        assertThat(stress).isBetween(0.0, before);
        before = stress;
      }
      assertThat(water.depletionMm(water.fieldCapacityPct() + 3)).isZero();
      assertThat(water.depletionMm(wp - 3)).isEqualTo(water.totalMm());
    }
  }

  /** Depth = moisture x depth, as in the catalogue: (24 - 17) % over 150 mm are 10.5 mm. */
  @Test
  void depletionIsADepth() {
    assertThat(new AvailableWater(24, 5, 150).depletionMm(17)).isCloseTo(10.5, within(1e-12));
  }

  @Test
  void figuresThatCannotBeAreRefused() {
    assertThatThrownBy(() -> new AvailableWater(9, 12, 100))
        .hasMessage("field capacity must be > 12.0 % by volume, was 9.0");
    assertThatThrownBy(() -> new AvailableWater(20, 10, Double.NaN))
        .hasMessage("root depth must be > 0.0 mm, was NaN");
    assertThatThrownBy(() -> AvailableWater.depletionShare(0.4, -1))
        .hasMessageContaining("crop evapotranspiration must be >= 0.0 mm a day");
    assertThatThrownBy(() -> new AvailableWater(20, 10, 100).stress(2, 1))
        .hasMessageContaining("depletion share");
  }

  /** FAO-56 tables 12 and 22, turf grass (Allen et al. 1998). */
  @Test
  void coefficientsOfTurf() {
    assertThat(TurfCoefficient.COOL_SEASON.tabled())
        .isEqualTo(new TurfCoefficient.Tabled(0.90, 0.95, 0.95, 0.40));
    assertThat(TurfCoefficient.WARM_SEASON.tabled())
        .isEqualTo(new TurfCoefficient.Tabled(0.80, 0.85, 0.85, 0.50));
    // 5 mm a day and 0.9 are 4.5 % a day over 100 mm
    assertThat(TurfCoefficient.COOL_SEASON.etcMm(5)).isCloseTo(4.5, within(1e-12));
    assertThat(TurfCoefficient.WARM_SEASON.etcMm(4)).isCloseTo(3, within(1e-12));
    assertThat(TurfCoefficient.etcMm(0.6, 5)).isCloseTo(3, within(1e-12));
    assertThatThrownBy(() -> TurfCoefficient.etcMm(90, 5))
        .hasMessageContaining("crop coefficient must be between 0.0 and 2.0, was 90.0");
  }
}
