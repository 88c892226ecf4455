package org.mottle.engine.localgrid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;

/** Laws of the similarity, and what it refuses. */
class LocalGridTest {
  private static PointPair pair(String name, double e, double n, double east, double north) {
    return new PointPair(name, new Coordinate(e, n), new Coordinate(east, north));
  }

  private static LocalGridOutcome.Fitted fitted(List<PointPair> controls) {
    return (LocalGridOutcome.Fitted) LocalGrid.fit(controls);
  }

  private static String why(List<PointPair> controls) {
    return ((LocalGridOutcome.NotFitted) LocalGrid.fit(controls)).why().toString();
  }

  /** Given shift, turn and scale come back, on UTM-sized coordinates, for any set of controls. */
  @Test
  void recoversWhatItWasMadeOf() {
    for (long seed = 0; seed < 50; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      Similarity truth =
          new Similarity(
              new Coordinate(500_000, 5_300_000),
              new Coordinate(1000, 2000),
              0.9 + 0.2 * random.nextDouble(),
              random.nextDouble() - 0.5);
      List<PointPair> controls = new ArrayList<>();
      for (int i = 0; i < 3 + random.nextInt(6); i++) {
        Coordinate at =
            new Coordinate(
                500_000 + 400 * Math.cos(i) + 50 * random.nextDouble(),
                5_300_000 + 400 * Math.sin(i) + 50 * random.nextDouble());
        controls.add(new PointPair("C" + i, at, truth.apply(at)));
      }
      LocalGridOutcome.Fitted fit = fitted(controls);
      assertThat(fit.similarity().a()).as("seed %d", seed).isCloseTo(truth.a(), within(1e-10));
      assertThat(fit.similarity().b()).as("seed %d", seed).isCloseTo(truth.b(), within(1e-10));
      assertThat(fit.rmse()).as("seed %d", seed).isLessThan(1e-7);
    }
  }

  /**
   * Closed form: a square of side 2 whose corners are each pushed outward by d along the diagonal
   * is a square of side 2 + d root 2, without residual; pushed in and out by turns it keeps scale 1
   * and every residual is d.
   */
  @Test
  void squaresPushedOutAndByTurns() {
    double d = 0.1;
    double[][] corners = {{1, 1}, {-1, 1}, {-1, -1}, {1, -1}};
    List<PointPair> out = new ArrayList<>();
    List<PointPair> turns = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double step = d / Math.sqrt(2);
      double turn = i % 2 == 0 ? step : -step;
      double x = corners[i][0];
      double y = corners[i][1];
      out.add(pair("C" + i, x, y, x * (1 + step), y * (1 + step)));
      turns.add(pair("C" + i, x, y, x * (1 + turn), y * (1 + turn)));
    }
    assertThat(fitted(out).similarity().scale()).isCloseTo(1 + d / Math.sqrt(2), within(1e-14));
    assertThat(fitted(out).rmse()).isLessThan(1e-14);
    LocalGridOutcome.Fitted fit = fitted(turns);
    assertThat(fit.similarity().scale()).isCloseTo(1, within(1e-14));
    assertThat(fit.rmse()).isCloseTo(d, within(1e-14));
    assertThat(fit.unitSd()).isCloseTo(Math.sqrt(4 * d * d / 4), within(1e-14));
    assertThat(fit.residuals()).allMatch(r -> Math.abs(r.length() - d) < 1e-14);
  }

  /** No neighbouring similarity has a smaller sum of squares; the residuals sum to nothing. */
  @Test
  void isTheLeastOne() {
    List<PointPair> controls =
        List.of(
            pair("A", 0, 0, 10.02, 20.01),
            pair("B", 100, 5, 107.0, 53.98),
            pair("C", 40, 80, 15.9, 103.0),
            pair("D", -20, 60, -25.1, 62.4));
    LocalGridOutcome.Fitted fit = fitted(controls);
    double least = fit.rmse();
    assertThat(fit.residuals().stream().mapToDouble(Residual::east).sum())
        .isCloseTo(0, within(1e-11));
    assertThat(fit.residuals().stream().mapToDouble(Residual::north).sum())
        .isCloseTo(0, within(1e-11));
    Coordinate mean = new Coordinate(30, 36.25);
    Coordinate put = fit.similarity().apply(mean);
    double[][] steps = {{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}};
    for (double[] s : steps) {
      for (double h : new double[] {1e-4, -1e-4}) {
        Similarity other =
            new Similarity(
                mean,
                new Coordinate(put.x + h * s[0], put.y + h * s[1]),
                fit.similarity().a() + h * s[2],
                fit.similarity().b() + h * s[3]);
        double sum = 0;
        for (PointPair c : controls) {
          sum += Math.pow(other.apply(c.from()).distance(c.to()), 2);
        }
        assertThat(Math.sqrt(sum / 4)).isGreaterThan(least);
      }
    }
  }

  /** What pointed north (azimuth 0) points east (90) in a grid turned by a quarter. */
  @Test
  void rotationIsClockwise() {
    Similarity quarter = new Similarity(new Coordinate(0, 0), new Coordinate(0, 0), 0, -2);
    assertThat(quarter.apply(new Coordinate(0, 1)).x).isEqualTo(2);
    assertThat(quarter.rotationDeg()).isEqualTo(90);
    assertThat(quarter.scale()).isEqualTo(2);
    Coordinate back = quarter.inverse().apply(quarter.apply(new Coordinate(3, 4, 5)));
    assertThat(back.x).isCloseTo(3, within(1e-15));
    assertThat(back.y).isCloseTo(4, within(1e-15));
    assertThat(back.getZ()).isEqualTo(5);
  }

  @Test
  void refusesTooFewTwiceAndInALine() {
    PointPair a = pair("A", 0, 0, 0, 0);
    PointPair b = pair("B", 100, 0, 100, 0);
    assertThat(why(List.of(a, b))).contains("at least 3 controls, found 2");
    assertThat(why(List.of(a, b, pair("B", 50, 50, 50, 50)))).contains("B is given twice");
    assertThat(why(List.of(a, b, pair("C", 0, 50, 0.001, 0)))).contains("A and C share a place");
    assertThat(why(List.of(a, b, pair("C", 50, 1, 50, 1)))).contains("stand in a line");
    assertThat(LocalGrid.fit(List.of(a, b, pair("C", 50, 20, 50, 20))))
        .isInstanceOf(LocalGridOutcome.Fitted.class);
  }

  @Test
  void tellsEastAndNorthExchanged() {
    List<PointPair> wrong =
        List.of(
            pair("A", 0, 0, 0, 0),
            pair("B", 100, 0, 0, 100),
            pair("C", 30, 70, 70.01, 30),
            pair("D", 80, 60, 60, 80));
    assertThat(LocalGrid.betterExchanged(wrong, fitted(wrong).rmse())).isTrue();
    List<PointPair> right =
        wrong.stream()
            .map(c -> new PointPair(c.name(), c.from(), new Coordinate(c.to().y, c.to().x)))
            .toList();
    assertThat(LocalGrid.betterExchanged(right, fitted(right).rmse())).isFalse();
  }

  /** RMSE before is the root of shift² + RMSE after². */
  @Test
  void registrationSplitsIntoShiftAndRest() {
    Registration r =
        Registration.of(
            List.of(
                pair("A", 0, 0, 1.1, 0.5),
                pair("B", 50, 0, 50.9, 0.4),
                pair("C", 0, 50, 1.0, 50.6)));
    assertThat(r.shiftEast()).isCloseTo(1.0, within(1e-12));
    assertThat(r.shiftNorth()).isCloseTo(0.5, within(1e-12));
    assertThat(r.rmseBefore()).isCloseTo(Math.hypot(r.shift(), r.rmseAfter()), within(1e-12));
    assertThat(r.rmseAfter()).isCloseTo(Math.sqrt(0.04 / 3), within(1e-12));
    assertThat(r.residuals().get(0).east()).isCloseTo(0.1, within(1e-12));
  }
}
