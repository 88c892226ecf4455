package org.mottle.engine.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.distribution.UniformRealDistribution;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.simulation.FieldOutcome;
import org.mottle.engine.simulation.GaussianField;
import org.mottle.engine.simulation.NormalStream;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Power;
import org.mottle.engine.variogram.Spherical;

/** Calibration without association, power with one; 24 stations on a green of 24 m. */
class TerrainAssociationTest {
  private static final CellGrid GRID = new CellGrid(0, 24, 1, 24, 24);
  private static final NestedModel MOISTURE = NestedModel.of(0.6, new Spherical(3, 12));
  private static final NestedModel GROUND = NestedModel.of(0, new Spherical(1, 15));
  private static final int N = TerrainAssociation.LEAST_REALISATIONS;

  private static double[] field(NestedModel model, long seed) {
    GaussianField field = (GaussianField) FieldOutcome.of(model, GRID, false);
    NormalStream normals = new NormalStream(seed, 7);
    double[] one = new double[GRID.size()];
    field.newSampler().drawPair(normals, one, new double[GRID.size()]);
    for (int i = 0; i < one.length; i++) {
      one[i] += Math.sqrt(model.nugget()) * normals.next();
    }
    return one;
  }

  /** Every fifth metre, somewhat shifted; measured with a standard deviation of 0.9. */
  private static Observations stations(double[] moisture, long seed) {
    NormalStream normals = new NormalStream(seed, 8);
    double[] x = new double[24];
    double[] y = new double[24];
    double[] pct = new double[24];
    for (int k = 0; k < 24; k++) {
      int column = 2 + 5 * (k % 5);
      int row = 2 + 5 * (k / 5);
      x[k] = GRID.x(column);
      y[k] = GRID.y(row);
      pct[k] = 20 + moisture[GRID.index(row, column)] + 0.9 * normals.next();
    }
    double[] variance = new double[24];
    Arrays.fill(variance, 0.81);
    return Observations.of(x, y, pct).withMeasurementVariance(variance);
  }

  private static TerrainAssociation test(Observations stations, Raster attribute, long seed) {
    return (TerrainAssociation)
        TerrainAssociation.of(stations, attribute, MOISTURE, N, seed, Progress.NONE);
  }

  /** Both are autocorrelated: a plain test would call far more than 5 % of them associated. */
  @Test
  void p_is_uniform_without_association() {
    int trials = 300;
    double[] p = new double[trials];
    int plain = 0;
    int own = 0;
    for (int t = 0; t < trials; t++) {
      Observations stations = stations(field(MOISTURE, 1000 + t), t);
      Raster attribute = new Raster(GRID, field(GROUND, 5000 + t));
      TerrainAssociation a = test(stations, attribute, 9000 + t);
      p[t] = a.pWetterWhereHigher();
      own += a.pEitherWay() <= 0.05 ? 1 : 0;
      double r = a.correlation();
      double student = Math.abs(r) * Math.sqrt(22 / (1 - r * r));
      // 97.5 % quantile of Student's t with 22 degrees of freedom
      plain += student > 2.0739 ? 1 : 0;
    }
    double ks =
        new KolmogorovSmirnovTest().kolmogorovSmirnovTest(new UniformRealDistribution(0, 1), p);
    assertThat(ks).isGreaterThan(0.01);
    assertThat(own).isBetween(5, 27);
    assertThat(plain).isGreaterThan(own + 15);
  }

  @Test
  void moisture_that_follows_the_ground_is_found() {
    int found = 0;
    for (int t = 0; t < 40; t++) {
      double[] ground = field(GROUND, 300 + t);
      double[] moisture = field(MOISTURE, 600 + t);
      Arrays.setAll(moisture, i -> 0.4 * moisture[i] + 3 * ground[i]);
      TerrainAssociation a = test(stations(moisture, t), new Raster(GRID, ground), t);
      found += a.pWetterWhereHigher() <= 0.05 ? 1 : 0;
    }
    assertThat(found).isGreaterThan(30);
  }

  @Test
  void the_correlation_is_spearmans_and_its_sign_turns_with_the_attribute() {
    Observations stations = stations(field(MOISTURE, 3), 3);
    double[] ground = field(GROUND, 4);
    TerrainAssociation up = test(stations, new Raster(GRID, ground), 5);
    double[] at = new double[24];
    Arrays.setAll(at, k -> ground[GRID.index(2 + 5 * (k / 5), 2 + 5 * (k % 5))]);
    assertThat(up.correlation())
        .isCloseTo(new SpearmansCorrelation().correlation(stations.values(), at), within(1e-12));
    double[] turned = Arrays.stream(ground).map(v -> -v).toArray();
    TerrainAssociation down = test(stations, new Raster(GRID, turned), 5);
    assertThat(down.correlation()).isCloseTo(-up.correlation(), within(1e-12));
    assertThat(up.pWetterWhereHigher() + down.pWetterWhereHigher())
        .isCloseTo(1 + 1.0 / (N + 1), within(0.02));
    assertThat(down.pEitherWay()).isCloseTo(up.pEitherWay(), within(1e-12));
  }

  @Test
  void mean_of_the_moisture_and_scale_of_the_attribute_do_not_matter() {
    Observations stations = stations(field(MOISTURE, 13), 13);
    double[] ground = field(GROUND, 14);
    TerrainAssociation before = test(stations, new Raster(GRID, ground), 15);
    Observations wetter =
        stations.withValues(Arrays.stream(stations.values()).map(v -> v + 8).toArray());
    Raster scaled = new Raster(GRID, Arrays.stream(ground).map(Math::exp).toArray());
    assertThat(test(wetter, scaled, 15)).isEqualTo(before);
    assertThat(test(stations, new Raster(GRID, ground), 15)).isEqualTo(before);
  }

  @Test
  void cells_are_calibrated_too() {
    int trials = 100;
    double[] p = new double[trials];
    for (int t = 0; t < trials; t++) {
      p[t] =
          ((TerrainAssociation)
                  TerrainAssociation.ofCells(
                      new Raster(GRID, field(MOISTURE, 20_000 + t)),
                      new Raster(GRID, field(GROUND, 30_000 + t)),
                      MOISTURE,
                      N,
                      t,
                      Progress.NONE))
              .pEitherWay();
    }
    double ks =
        new KolmogorovSmirnovTest().kolmogorovSmirnovTest(new UniformRealDistribution(0, 1), p);
    assertThat(ks).isGreaterThan(0.01);
  }

  @Test
  void what_cannot_be_tested_is_refused() {
    Observations stations = stations(field(MOISTURE, 1), 1);
    Raster ground = new Raster(GRID, field(GROUND, 2));
    Raster far = new Raster(new CellGrid(900, 924, 1, 24, 24), field(GROUND, 2));
    assertThat(reason(stations, far, MOISTURE)).contains("0 places").contains("8 are needed");
    Raster level = new Raster(GRID, new double[GRID.size()]);
    assertThat(reason(stations, level, MOISTURE)).contains("the attribute is the same everywhere");
    NestedModel endless = NestedModel.of(0, new Power(1, 1));
    assertThat(reason(stations, ground, endless)).contains("levels off");
    assertThatThrownBy(
            () -> TerrainAssociation.of(stations, ground, MOISTURE, 99, 1, Progress.NONE))
        .hasMessageContaining("499 or more, was 99");
  }

  private static String reason(Observations stations, Raster ground, NestedModel model) {
    AssociationOutcome outcome =
        TerrainAssociation.of(stations, ground, model, N, 1, Progress.NONE);
    return ((AssociationOutcome.Refused) outcome).why().reason();
  }
}
