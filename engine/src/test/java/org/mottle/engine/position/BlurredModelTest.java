package org.mottle.engine.position;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.variogram.Circular;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.Linear;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.Pentaspherical;
import org.mottle.engine.variogram.Power;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.VariogramModel;

/** The blurred model against a closed form, printed figures and an integral done another way. */
class BlurredModelTest {
  private static final double[] SDS = {0.003, 0.05, 0.5, 1, 2.5, 6, 25};

  static Stream<VariogramModel> models() {
    return Stream.of(
        new Spherical(4, 10),
        new Exponential(4, 3.5),
        new Gaussian(4, 6),
        new Matern(4, 2, 1.5),
        new Matern(4, 3, 0.3),
        new Matern(4, 0.7, 12),
        new Circular(4, 10),
        new Pentaspherical(4, 12),
        new Linear(4, 8));
  }

  /** Cressie & Kornak 2003: among readings of jitter s, c r²/(r² + 4s²) exp(-h²/(r² + 4s²)). */
  @ParameterizedTest
  @ValueSource(doubles = {0.003, 0.1, 0.5, 1, 2, 4, 15})
  void theGaussianModelHasAClosedForm(double jitter) {
    double r2 = 36;
    BlurredModel among = BlurredModel.of(new Gaussian(4, 6), Math.sqrt(2) * jitter);
    BlurredModel toTarget = BlurredModel.of(new Gaussian(4, 6), jitter);
    for (double h = 0; h < 90; h += 0.37) {
      double wide = r2 + 4 * jitter * jitter;
      assertThat(among.semivariance(h))
          .as("s " + jitter + ", h " + h)
          .isCloseTo(4 - 4 * r2 / wide * Math.exp(-h * h / wide), within(4e-7));
      double narrow = r2 + 2 * jitter * jitter;
      assertThat(toTarget.semivariance(h))
          .as("s " + jitter + ", h " + h)
          .isCloseTo(4 - 4 * r2 / narrow * Math.exp(-h * h / narrow), within(4e-7));
    }
  }

  /**
   * At lag 0, sill 4, both readings with the jitter: the moments of a Rayleigh distance cut off at
   * the range, in closed form; computed with Python 3.11 (math.erf, math.exp).
   */
  @ParameterizedTest
  @CsvSource({
    "6, 0.8739, 1.6740, 2.8042, 3.3441, 3.7328",
    "10, 0.5291, 1.0422, 1.9569, 2.6351, 3.3441",
    "15, 0.3537, 0.7027, 1.3675, 1.9569, 2.8042"
  })
  void jitterTurnsStructureIntoNugget(
      double range, double half, double one, double two, double three, double five) {
    double[] jitter = {0.5, 1, 2, 3, 5};
    double[] expected = {half, one, two, three, five};
    for (int i = 0; i < jitter.length; i++) {
      BlurredModel blurred = BlurredModel.of(new Spherical(4, range), Math.sqrt(2) * jitter[i]);
      assertThat(blurred.semivariance(0))
          .as("range " + range + ", s " + jitter[i])
          .isCloseTo(expected[i], within(0.00005001));
    }
  }

  /** Over the displacement in polar coordinates, without the density of Rice. */
  private static double overThePlane(VariogramModel model, double sd, double h) {
    int rings = 400;
    int spokes = 100;
    double sum = 0;
    for (int k = 0; k < rings; k++) {
      double t = sd * Math.sqrt(-2 * Math.log1p(-(k + 0.5) / rings));
      for (int a = 0; a < spokes; a++) {
        double c = Math.cos(Math.PI * (a + 0.5) / spokes);
        sum += model.semivariance(Math.sqrt(Math.max(0, h * h + t * t + 2 * h * t * c)));
      }
    }
    return sum / rings / spokes;
  }

  @ParameterizedTest
  @MethodSource("models")
  void theIntegralIsTheMeanOverTheDisplacements(VariogramModel model) {
    DisplacedSemivariance displaced = DisplacedSemivariance.of(model);
    for (double sd : new double[] {0.05, 1, 6}) {
      for (double h : new double[] {0, 0.4, 3, 9.7, 14}) {
        assertThat(displaced.semivariance(sd, h))
            .as(model + ", s " + sd + ", h " + h)
            .isCloseTo(overThePlane(model, sd, h), within(5e-3));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("models")
  void theTableIsTheIntegral(VariogramModel model) {
    long seed = 11;
    Random random = new Random(seed);
    DisplacedSemivariance displaced = DisplacedSemivariance.of(model);
    double worst = 0;
    for (double sd : SDS) {
      BlurredModel blurred = BlurredModel.of(model, sd);
      double far = displaced.reach(sd);
      for (int i = 0; i < 600; i++) {
        double h = (i % 2 == 0 ? 1.05 * far : 20 * Math.min(sd, far / 20)) * random.nextDouble();
        double off = Math.abs(blurred.semivariance(h) - displaced.semivariance(sd, h));
        worst = Math.max(worst, off / model.partialSill());
      }
    }
    assertThat(worst).as(model + ", seed " + seed).isLessThan(1e-7);
  }

  /** The integral once more, on either side of the range, with 400 midpoints. */
  @ParameterizedTest
  @MethodSource("models")
  void theNodesOfTheIntegralAreEnough(VariogramModel model) {
    DisplacedSemivariance displaced = DisplacedSemivariance.of(model);
    for (double sd : SDS) {
      for (double h : new double[] {0, 0.4, 3, 9.9, 14, 40}) {
        assertThat(displaced.semivariance(sd, h))
            .as(model + ", s " + sd + ", h " + h)
            .isCloseTo(byMidpoints(model, sd, h), within(1e-7 * model.partialSill()));
      }
    }
  }

  /** Midpoints in u with r = low + span u³ (10 - 15 u + 6 u²), which is flat at both ends. */
  private static double byMidpoints(VariogramModel model, double sd, double h) {
    double low = Math.max(0, h - 9 * sd);
    double kink = Math.min(Math.max(low, model.range()), h + 9 * sd);
    return model.partialSill()
        - covariance(model, sd, h, low, kink)
        - covariance(model, sd, h, kink, h + 9 * sd);
  }

  private static double covariance(
      VariogramModel model, double sd, double h, double low, double high) {
    int n = 400;
    double sum = 0;
    for (int k = 0; k < n; k++) {
      double u = (k + 0.5) / n;
      double r = low + (high - low) * u * u * u * (10 - 15 * u + 6 * u * u);
      double off = (r - h) / sd;
      double density = r / sd / sd * Math.exp(-off * off / 2) * bessel(r * h / sd / sd);
      sum +=
          30 * u * u * (1 - u) * (1 - u) * density * (model.partialSill() - model.semivariance(r));
    }
    return sum * (high - low) / n;
  }

  /** Far out by its asymptotic series (Abramowitz & Stegun 1964, 9.7.1). */
  private static double bessel(double x) {
    return x < 500
        ? ScaledBesselI0.integral(x)
        : (1 + 1 / (8 * x) + 9 / (128 * x * x)) / Math.sqrt(2 * Math.PI * x);
  }

  @ParameterizedTest
  @MethodSource("models")
  void noDisplacementLeavesTheModelToTheLastBit(VariogramModel model) {
    BlurredModel blurred = BlurredModel.of(model, 0);
    double[] squared = {0, 0.1, 4, 90, 1000};
    double[] sum = new double[5];
    double[] expected = new double[5];
    blurred.addSemivariances(squared, 5, sum);
    model.addSemivariances(squared, 5, expected);
    assertThat(sum).isEqualTo(expected);
    assertThat(blurred.semivariance(3.3)).isEqualTo(model.semivariance(3.3));
  }

  @ParameterizedTest
  @MethodSource("models")
  void blurringRaisesShortLagsAndKeepsTheSillAndScales(VariogramModel model) {
    for (double sd : SDS) {
      BlurredModel blurred = BlurredModel.of(model, sd);
      assertThat(blurred.semivariance(0)).as(model + ", s " + sd).isBetween(1e-9, 4.0);
      assertThat(blurred.semivariance(1e4)).isEqualTo(4);
      BlurredModel twice =
          BlurredModel.of(model.with(3 * model.partialSill(), 2 * model.range()), 2 * sd);
      double before = 0;
      for (double h = 0; h < 30; h += 0.25) {
        double gamma = blurred.semivariance(h);
        assertThat(gamma).as(model + ", s " + sd + ", h " + h).isGreaterThan(before - 1e-6);
        assertThat(twice.semivariance(2 * h)).isCloseTo(3 * gamma, within(1e-6));
        before = gamma;
      }
    }
  }

  @Test
  void manyLagsAreOneByOne() {
    BlurredModel blurred = BlurredModel.of(new Exponential(2, 5), 1.3);
    double[] sum = {1, 1, 1};
    blurred.addSemivariances(new double[] {0, 4, 1e6}, 3, sum);
    assertThat(sum)
        .containsExactly(
            1 + blurred.semivariance(0),
            1 + blurred.semivariance(2),
            1 + blurred.semivariance(1e3));
  }

  @Test
  void theBesselFunctionIsThatOfTheTables() {
    // e^-x I0(x) as Abramowitz & Stegun 1964, table 9.8, prints it; from memory
    assertThat(ScaledBesselI0.at(0)).isCloseTo(1, within(1e-10));
    assertThat(ScaledBesselI0.at(0.2)).isCloseTo(0.8269385516, within(1e-9));
    assertThat(ScaledBesselI0.at(5)).isCloseTo(0.1835408126, within(1e-9));
    for (double x = 0; x < 900; x = x * 1.01 + 0.001) {
      assertThat(ScaledBesselI0.at(x))
          .as("x " + x)
          .isCloseTo(ScaledBesselI0.integral(x), within(1e-10));
    }
  }

  @Test
  void refusesWhatHasNoSill() {
    for (VariogramModel model : List.of(new Linear(1, 0), new Power(1, 1.5))) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> BlurredModel.of(model, 1))
          .withMessageContaining("position error needs a variogram that levels off, was " + model);
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> BlurredModel.of(new Spherical(1, 1), -0.5))
        .withMessageContaining("was -0.5");
  }
}
