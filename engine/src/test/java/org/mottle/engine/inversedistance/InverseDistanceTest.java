package org.mottle.engine.inversedistance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.kriging.CellStatus;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.kriging.ValidationTable;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/** Inverse distance against gstat 2.1.0 (R 4.2.2) on the Meuse data, and by its laws. */
class InverseDistanceTest {
  private static final ValidationTable POINTS = ValidationTable.read("meuse_points.csv");
  private static final ValidationTable TARGETS = ValidationTable.read("meuse_targets.csv");
  private static final ValidationTable EXPECTED = ValidationTable.read("meuse_predictions.csv");

  private static Observations meuse() {
    return Observations.of(POINTS.column("x"), POINTS.column("y"), POINTS.column("logzinc"));
  }

  @ParameterizedTest
  @CsvSource({"idw1, 1, 155", "idw2, 2, 155", "idw3, 3, 155", "idw2_n12, 2, 12"})
  void againstGstat(String column, double power, int nearest) {
    InverseDistance method = new InverseDistance(power, Neighbourhood.nearest(nearest));
    Targets targets = Targets.of(TARGETS.column("x"), TARGETS.column("y"));
    Estimates estimates = method.estimate(meuse(), targets, 1, Progress.NONE);
    for (int i = 0; i < EXPECTED.size(); i++) {
      double expected = EXPECTED.number(column, i);
      assertThat(estimates.value(i))
          .as(column + " at cell " + EXPECTED.text("cell", i))
          .isCloseTo(expected, within(1e-8 * Math.abs(expected)));
    }
  }

  @ParameterizedTest
  @CsvSource({"1", "1.7", "2", "3", "9.5"})
  void exactAtObservationsAndBetweenTheExtremes(double power) {
    Observations meuse = meuse();
    Targets atData = Targets.of(meuse.xs(), meuse.ys());
    InverseDistance all = InverseDistance.ofPower(power);
    InverseDistance near = all.with(Neighbourhood.nearest(8));
    assertThat(all.estimate(meuse, atData, 1, Progress.NONE).values()).isEqualTo(meuse.values());
    assertThat(near.estimate(meuse, atData, 1, Progress.NONE).values()).isEqualTo(meuse.values());
    double low = Arrays.stream(meuse.values()).min().orElseThrow();
    double high = Arrays.stream(meuse.values()).max().orElseThrow();
    Targets grid = Targets.of(TARGETS.column("x"), TARGETS.column("y"));
    for (double v : all.estimate(meuse, grid, 1, Progress.NONE).values()) {
      assertThat(v).isBetween(low, high);
    }
  }

  @Test
  void theMeanAtASharedPlace() {
    Observations twice =
        Observations.of(new double[] {1, 1, 5}, new double[] {2, 2, 5}, new double[] {10, 20, 99});
    Targets there = Targets.of(new double[] {1}, new double[] {2});
    InverseDistance method = InverseDistance.ofPower(2);
    assertThat(method.estimate(twice, there, 1, Progress.NONE).value(0)).isEqualTo(15);
    assertThat(
            method.with(Neighbourhood.nearest(2)).estimate(twice, there, 1, Progress.NONE).value(0))
        .isEqualTo(15);
  }

  @Test
  void neighboursOfAllAreAllAndThreadsChangeNothing() {
    long seed = 11;
    Random random = new Random(seed);
    Observations some =
        Observations.of(
            random.doubles(300, 0, 100).toArray(),
            random.doubles(300, 0, 100).toArray(),
            random.doubles(300, 5, 40).toArray());
    Targets targets =
        Targets.of(
            random.doubles(2000, -10, 110).toArray(), random.doubles(2000, 0, 100).toArray());
    InverseDistance method = InverseDistance.ofPower(2);
    double[] one = method.estimate(some, targets, 1, Progress.NONE).values();
    assertThat(method.estimate(some, targets, 8, Progress.NONE).values()).isEqualTo(one);
    InverseDistance wide = method.with(Neighbourhood.ALL.within(1000));
    assertThat(wide.estimate(some, targets, 2, Progress.NONE).values())
        .as("seed %d", seed)
        .containsExactly(one, within(1e-11));
  }

  @Test
  void nothingWithinReach() {
    InverseDistance method = InverseDistance.ofPower(2).with(Neighbourhood.ALL.within(10));
    Targets far = Targets.of(new double[] {0}, new double[] {0});
    Estimates none = method.estimate(meuse(), far, 1, Progress.NONE);
    assertThat(none.status(0)).isEqualTo(CellStatus.TOO_FEW_NEIGHBOURS);
    assertThat(none.value(0)).isNaN();
  }

  @Test
  void refusesAPowerOfNothing() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> InverseDistance.ofPower(0))
        .withMessageStartingWith("power must be > 0.0")
        .withMessageEndingWith("was 0.0");
  }
}
