package org.mottle.engine.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.reference.ReferenceTable;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

class ConditionalSimulationTest {
  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  /** A green of 12 x 9 m, cells of 0.5 m. */
  private static final GreenCells GREEN = GreenCells.of(box(0, 0, 12, 9), 0.5);

  private static Geometry box(double west, double south, double east, double north) {
    return GEOMETRY.toGeometry(new Envelope(west, east, south, north));
  }

  /** Ten readings, one of them a little outside, two in one cell. */
  private static Observations readings() {
    double[] x = {1.1, 3.4, 6.05, 9.2, 11.3, 2.2, 5.6, 8.15, 8.3, 12.8};
    double[] y = {1.3, 7.2, 4.4, 2.1, 8.25, 4.6, 1.9, 6.1, 6.2, 5.0};
    double[] z = {21, 24, 19, 27, 25, 23, 18, 22, 23, 28};
    return Observations.of(x, y, z);
  }

  private static ConditionalSimulation simulation(
      Simulation settings, GreenCells cells, Draw... draws) {
    SimulationOutcome outcome = settings.of(List.of(draws), cells, 1, Progress.NONE);
    assertThat(outcome).isInstanceOf(ConditionalSimulation.class);
    return (ConditionalSimulation) outcome;
  }

  /** Sums and squares of chosen cells, and products of the first four. */
  private static final class Moments implements RealisationAccumulator<Moments> {
    private final int[] cells;
    private final double[] sum;
    private final double[] square;
    private final double[][] product = new double[4][4];
    private final List<Integer> order = new ArrayList<>();

    Moments(int... cells) {
      this.cells = cells;
      this.sum = new double[cells.length];
      this.square = new double[cells.length];
    }

    @Override
    public void add(int index, double[] values) {
      order.add(index);
      for (int i = 0; i < cells.length; i++) {
        double v = values[cells[i]];
        sum[i] += v;
        square[i] += v * v;
        for (int j = 0; i < 4 && j < Math.min(4, cells.length); j++) {
          product[i][j] += v * values[cells[j]];
        }
      }
    }

    @Override
    public void merge(Moments next) {
      order.addAll(next.order);
      for (int i = 0; i < cells.length; i++) {
        sum[i] += next.sum[i];
        square[i] += next.square[i];
        for (int j = 0; i < 4 && j < 4; j++) {
          product[i][j] += next.product[i][j];
        }
      }
    }

    double mean(int i) {
      return sum[i] / order.size();
    }

    double variance(int i) {
      int n = order.size();
      return (square[i] - sum[i] * sum[i] / n) / (n - 1);
    }

    double covariance(int i, int j) {
      int n = order.size();
      return (product[i][j] - sum[i] * sum[j] / n) / (n - 1);
    }
  }

  private static int[] allCells(GreenCells cells) {
    return java.util.stream.IntStream.range(0, cells.neededCount()).toArray();
  }

  /**
   * Exact conditional figures of the Meuse data, computed with gstat 2.1.0, R 4.2.2. There the
   * nugget of 0.05 is part of the targets and of the data. No target is a reading, so that for the
   * field without nugget the nugget of the readings is a measurement variance, means and
   * covariances of the targets are the same, and their variances less by the nugget.
   */
  @Test
  void means_and_covariances_are_those_computed_elsewhere() {
    ReferenceTable data = ReferenceTable.of("sim_data60");
    ReferenceTable check = ReferenceTable.of("sim_conditional_check");
    ReferenceTable exact = ReferenceTable.of("sim_conditional_covariance");
    double[] z = data.numbers("z");
    double[] nugget = new double[z.length];
    Arrays.fill(nugget, 0.05);
    Observations observations =
        Observations.of(data.numbers("x"), data.numbers("y"), z).withMeasurementVariance(nugget);
    // centres on whole hundreds
    GreenCells cells =
        GreenCells.of(
            box(180460, 332760, 181240, 333640),
            new org.mottle.engine.grid.CellGrid(180450, 333650, 100, 8, 9));
    int[] cell = new int[4];
    for (int t = 0; t < 4; t++) {
      cell[t] = cellAt(cells, check.number(t, "x"), check.number(t, "y"));
    }
    int n = 4000;
    ConditionalSimulation simulation =
        simulation(
            new Simulation(Drift.knownMean(Arrays.stream(z).average().orElseThrow()), n, 5),
            cells,
            new Draw(NestedModel.of(0, new Spherical(0.59, 897)), observations));
    Moments moments = simulation.collect(() -> new Moments(cell), 2, Progress.NONE);
    for (int t = 0; t < 4; t++) {
      double variance = check.number(t, "sk_var");
      assertThat(simulation.mean()[cell[t]]).isCloseTo(check.number(t, "sk_pred"), within(1e-9));
      assertThat(Math.pow(simulation.standardDeviation()[cell[t]], 2) + 0.05)
          .isCloseTo(variance, within(1e-9));
      assertThat(moments.mean(t))
          .as("mean of target %d", t)
          .isCloseTo(check.number(t, "sk_pred"), within(4 * Math.sqrt(variance / n)));
      for (int u = 0; u < 4; u++) {
        double expected = exact.number(t, "t" + (u + 1)) - (t == u ? 0.05 : 0);
        double scale =
            Math.sqrt(
                (exact.number(t, "t" + (t + 1)) - 0.05) * (exact.number(u, "t" + (u + 1)) - 0.05));
        assertThat(moments.covariance(t, u))
            .as("covariance of targets %d and %d", t, u)
            .isCloseTo(expected, within(t == u ? 0.09 * expected : 4.5 * scale / Math.sqrt(n)));
      }
    }
  }

  private static int cellAt(GreenCells cells, double x, double y) {
    double[] xs = cells.neededX();
    double[] ys = cells.neededY();
    for (int i = 0; i < xs.length; i++) {
      if (Math.hypot(xs[i] - x, ys[i] - y) < 1e-6) {
        return i;
      }
    }
    throw new AssertionError("no cell at " + x + " " + y);
  }

  /** Every cell's mean and variance against kriging; the share beyond 3 sd is that of chance. */
  private static void assertAgreesWithKriging(
      Simulation settings, NestedModel model, Observations observations) {
    ConditionalSimulation simulation = simulation(settings, GREEN, new Draw(model, observations));
    var kriged =
        Kriging.ordinary(model)
            .with(settings.drift())
            .fit(observations)
            .estimate(Targets.of(GREEN.neededX(), GREEN.neededY()), 1, Progress.NONE);
    Moments moments = simulation.collect(() -> new Moments(allCells(GREEN)), 2, Progress.NONE);
    int n = settings.realisations();
    double sumZ = 0;
    double ratios = 0;
    for (int c = 0; c < GREEN.neededCount(); c++) {
      assertThat(simulation.mean()[c]).isCloseTo(kriged.value(c), within(1e-10));
      double z = (moments.mean(c) - kriged.value(c)) / Math.sqrt(kriged.variance(c) / n);
      double ratio = moments.variance(c) / kriged.variance(c);
      assertThat(z).as("mean of cell %d, seed %d", c, settings.seed()).isBetween(-5.0, 5.0);
      assertThat(ratio)
          .as("variance of cell %d, seed %d", c, settings.seed())
          .isCloseTo(1, within(5.5 * Math.sqrt(2.0 / n)));
      sumZ += z / GREEN.neededCount();
      ratios += ratio / GREEN.neededCount();
    }
    assertThat(sumZ).as("mean z, seed %d", settings.seed()).isBetween(-1.5, 1.5);
    assertThat(ratios).as("mean ratio of variances").isCloseTo(1, within(0.02));
  }

  @Test
  void exact_positions_agree_with_kriging() {
    double[] noise = new double[10];
    Arrays.fill(noise, 0.4);
    assertAgreesWithKriging(
        Simulation.withDefaults().withRealisations(4000).withSeed(3),
        NestedModel.of(0, new Exponential(6, 4)),
        readings().withMeasurementVariance(noise));
  }

  @Test
  void errors_of_position_and_in_common_agree_with_kriging() {
    double[] noise = new double[10];
    Arrays.fill(noise, 0.3);
    double[] jitter = new double[10];
    Arrays.fill(jitter, 0.6);
    jitter[4] = 0;
    boolean[] members = {true, false, true, true, false, false, true, false, true, false};
    Observations observations =
        readings()
            .withMeasurementVariance(noise)
            .withPositionError(new PositionError(jitter, 0.5))
            .withCommonErrors(List.of(CommonError.of(members, 0.5)));
    assertAgreesWithKriging(
        Simulation.withDefaults().withRealisations(4000).withSeed(8),
        NestedModel.of(0, new Spherical(6, 7)),
        observations);
  }

  @Test
  void a_long_range_agrees_with_kriging() {
    assertAgreesWithKriging(
        Simulation.withDefaults().withRealisations(4000).withSeed(5),
        NestedModel.of(0, new Exponential(40, 40)),
        readings());
  }

  @Test
  void a_drift_in_the_coordinates_and_a_known_mean_agree_with_kriging() {
    double[] noise = new double[10];
    Arrays.fill(noise, 0.4);
    Observations observations =
        readings()
            .withMeasurementVariance(noise)
            .withPositionError(new PositionError(filled(10, 0.4), 0));
    assertAgreesWithKriging(
        new Simulation(Drift.coordinates(), 3000, 4),
        NestedModel.of(0, new Exponential(6, 4)),
        readings().withMeasurementVariance(noise));
    assertAgreesWithKriging(
        new Simulation(Drift.knownMean(22), 3000, 6),
        NestedModel.of(0, new Exponential(6, 12)),
        observations);
  }

  /** Two readings in one hole differ by their measurement errors only. */
  @Test
  void replicates_at_one_place_agree_with_kriging() {
    Observations observations =
        Observations.of(
                new double[] {3.1, 3.1, 3.1, 9.3, 9.3},
                new double[] {4.2, 4.2, 4.2, 6.6, 6.7},
                new double[] {21, 22, 23, 26, 27})
            .withMeasurementVariance(filled(5, 0.02));
    assertAgreesWithKriging(
        new Simulation(Drift.constant(), 3000, 12),
        NestedModel.of(0, new Exponential(6, 2)),
        observations);
  }

  @Test
  void ground_without_structure_keeps_the_uncertainty_of_its_mean() {
    assertAgreesWithKriging(
        new Simulation(Drift.constant(), 3000, 13),
        NestedModel.of(0, new Spherical(0, 5)),
        noisy(readings(), 2));
  }

  @Test
  void without_errors_every_realisation_honours_the_readings_at_nodes() {
    double[] x = {1.25, 6.75, 10.25, 4.25};
    double[] y = {1.75, 4.25, 7.75, 8.25};
    double[] z = {20, 31, 17, 25};
    Observations observations = Observations.of(x, y, z);
    for (NestedModel model :
        List.of(NestedModel.of(0, new Exponential(6, 4)), NestedModel.of(0, new Gaussian(6, 2)))) {
      ConditionalSimulation simulation =
          simulation(
              Simulation.withDefaults().withRealisations(20), GREEN, new Draw(model, observations));
      simulation.forEach(
          (index, values) -> {
            for (int i = 0; i < x.length; i++) {
              assertThat(values[cellAt(GREEN, x[i], y[i])]).isCloseTo(z[i], within(1e-3));
            }
          },
          1,
          Progress.NONE);
    }
  }

  private static ConditionalSimulation threeDraws(int realisations) {
    Observations observations =
        readings().withPositionError(new PositionError(filled(10, 0.5), 0.3));
    return simulation(
        Simulation.withDefaults().withRealisations(realisations).withSeed(17),
        GREEN,
        new Draw(NestedModel.of(0, new Exponential(6, 4)), noisy(observations, 0.2)),
        new Draw(NestedModel.of(0, new Spherical(9, 8)), noisy(observations, 0.5)),
        new Draw(NestedModel.of(0, new Exponential(4, 30)), noisy(observations, 0.9)));
  }

  private static Observations noisy(Observations observations, double variance) {
    return observations.withMeasurementVariance(filled(10, variance));
  }

  private static double[] filled(int n, double value) {
    double[] all = new double[n];
    Arrays.fill(all, value);
    return all;
  }

  @Test
  void any_number_of_threads_gives_the_same_bytes_in_the_same_order() {
    ConditionalSimulation simulation = threeDraws(101);
    int[] cells = {0, 17, 100, 250};
    Moments one = simulation.collect(() -> new Moments(cells), 1, Progress.NONE);
    List<double[]> kept = new ArrayList<>();
    simulation.forEach((i, v) -> kept.add(v.clone()), 1, Progress.NONE);
    for (int threads : new int[] {2, 4}) {
      Moments several = simulation.collect(() -> new Moments(cells), threads, Progress.NONE);
      assertThat(several.order).isEqualTo(one.order);
      assertThat(several.sum).isEqualTo(one.sum);
      assertThat(several.product).isDeepEqualTo(one.product);
      List<Integer> order = new ArrayList<>();
      simulation.forEach(
          (i, v) -> {
            order.add(i);
            assertThat(v).isEqualTo(kept.get(i));
          },
          threads,
          Progress.NONE);
      assertThat(order).isEqualTo(one.order);
    }
    assertThat(one.order).hasSize(101).isSorted().startsWith(0).endsWith(100);
  }

  @Test
  void a_realisation_by_itself_is_the_one_of_the_stream() {
    ConditionalSimulation simulation = threeDraws(101);
    simulation.forEach(
        (i, v) -> {
          if (i == 7 || i == 34 || i == 100) {
            assertThat(simulation.realisation(i)).isEqualTo(v);
          }
        },
        1,
        Progress.NONE);
  }

  @Test
  void draws_take_equal_consecutive_shares() {
    ConditionalSimulation simulation = threeDraws(101);
    int[] count = new int[3];
    int last = 0;
    for (int r = 0; r < 101; r++) {
      assertThat(simulation.drawOf(r)).isGreaterThanOrEqualTo(last);
      last = simulation.drawOf(r);
      count[last]++;
    }
    assertThat(count).containsExactly(33, 34, 34);
  }

  @Test
  void another_seed_gives_other_realisations() {
    Draw draw = new Draw(NestedModel.of(0, new Exponential(6, 4)), readings());
    Simulation settings = Simulation.withDefaults().withRealisations(2);
    assertThat(simulation(settings.withSeed(1), GREEN, draw).realisation(0))
        .isNotEqualTo(simulation(settings.withSeed(2), GREEN, draw).realisation(0));
  }

  @Test
  void probabilities_from_realisations_agree_with_the_exact_mixture() {
    int n = 6000;
    ConditionalSimulation simulation = threeDraws(n);
    double[] below = simulation.probabilityBelow(21.5);
    double[] above = simulation.probabilityAbove(21.5);
    double[] mean = simulation.mean();
    double[] sd = simulation.standardDeviation();
    int[] count = new int[simulation.cells()];
    double[] sum = new double[simulation.cells()];
    double[] squares = new double[simulation.cells()];
    simulation.forEach(
        (i, v) -> {
          for (int c = 0; c < v.length; c++) {
            count[c] += v[c] < 21.5 ? 1 : 0;
            sum[c] += v[c];
            squares[c] += (v[c] - mean[c]) * (v[c] - mean[c]);
          }
        },
        2,
        Progress.NONE);
    for (int c = 0; c < count.length; c++) {
      assertThat(below[c] + above[c]).isCloseTo(1, within(1e-12));
      double se = Math.sqrt(below[c] * above[c] / n);
      assertThat((double) count[c] / n).as("cell %d", c).isCloseTo(below[c], within(5 * se + 1e-3));
      assertThat(sum[c] / n).as("cell %d", c).isCloseTo(mean[c], within(5 * sd[c] / Math.sqrt(n)));
      assertThat(squares[c] / n / sd[c] / sd[c]).as("cell %d", c).isCloseTo(1, within(0.12));
    }
  }

  @Test
  void the_caller_can_stop_it() {
    ConditionalSimulation simulation = threeDraws(101);
    AtomicInteger reports = new AtomicInteger();
    Progress stopping =
        new Progress() {
          @Override
          public void report(String phase, long done, long total) {
            assertThat(phase).isEqualTo("simulation");
            assertThat(done).isLessThanOrEqualTo(total);
            reports.incrementAndGet();
          }

          @Override
          public boolean cancelled() {
            return reports.get() >= 2;
          }
        };
    AtomicInteger shown = new AtomicInteger();
    assertThatThrownBy(() -> simulation.forEach((i, v) -> shown.incrementAndGet(), 1, stopping))
        .isInstanceOf(CancellationException.class);
    assertThat(shown.get()).isBetween(1, 100);
    reports.set(0);
    assertThatThrownBy(() -> simulation.collect(() -> new Moments(0), 2, stopping))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void what_cannot_be_simulated_is_refused_in_words() {
    Observations twice =
        Observations.of(new double[] {1, 1, 5}, new double[] {1, 1, 5}, new double[] {1, 2, 3});
    SimulationOutcome outcome =
        Simulation.withDefaults()
            .of(
                List.of(new Draw(NestedModel.of(0, new Exponential(6, 4)), twice)),
                GREEN,
                1,
                Progress.NONE);
    assertThat(outcome).isInstanceOf(SimulationOutcome.NotSimulated.class);
    assertThat(outcome.toString()).contains("draw 1 of 1").contains("observations are 1 and 2");
    assertThatThrownBy(() -> new Draw(NestedModel.of(2, new Exponential(6, 4)), twice))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("2.0")
        .hasMessageContaining("measurement variance");
    assertThatThrownBy(() -> Simulation.withDefaults().with(Drift.covariates()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("covariates");
  }

  @Test
  void a_cell_known_exactly_is_below_or_above() {
    Observations one =
        Observations.of(new double[] {1.25, 6}, new double[] {1.75, 6}, new double[] {20, 30});
    ConditionalSimulation simulation =
        simulation(
            Simulation.withDefaults().withRealisations(2),
            GREEN,
            new Draw(NestedModel.of(0, new Exponential(6, 4)), one));
    int cell = cellAt(GREEN, 1.25, 1.75);
    assertThat(simulation.probabilityBelow(21)[cell]).isCloseTo(1, within(1e-12));
    assertThat(simulation.probabilityAbove(21)[cell]).isCloseTo(0, within(1e-12));
  }

  @Test
  void coordinates_of_the_test_green() {
    assertThat(GREEN.neededCount()).isEqualTo(26 * 20);
    assertThat(new Coordinate(GREEN.neededX()[0], GREEN.neededY()[0]))
        .isEqualTo(new Coordinate(-0.25, 9.25));
  }
}
