package org.mottle.samples;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.fit.FitOutcome;
import org.mottle.engine.fit.Fitted;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.fit.WeightedLeastSquares;
import org.mottle.engine.kriging.Estimate;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;

/**
 * 01: kriging and a variogram with the engine alone. No files, no coordinate systems: plain numbers
 * in metres go in, plain numbers come out.
 */
public final class Sample01Variogram {

  private Sample01Variogram() {}

  public static void main(String[] args) {
    Estimate textbook = textbook();
    print("A textbook's seven samples, at (65, 137)");
    print("  estimate %.1f, kriging variance %.2f", textbook.value(), textbook.variance());

    Observations readings = readings();
    ExperimentalVariogram variogram = variogram(readings);
    print("%nTwenty-four readings of an invented green");
    print("  pairs   lag m   semivariance");
    for (Lag lag : variogram.lags()) {
      print("  %5d   %5.2f   %12.2f", lag.pairs(), lag.distance(), lag.semivariance());
    }
    NestedModel model = model(variogram);
    double range = model.structures().get(0).model().range();
    print("  spherical: nugget %.2f, sill %.2f, range %.1f m", model.nugget(), model.sill(), range);

    Estimate e = Kriging.ordinary(model).fit(readings).at(4, -4);
    print("  moisture at (4, -4): %.1f %%, SD %.1f %%", e.value(), e.standardDeviation());
  }

  /**
   * Ordinary kriging with a model that is given: the worked example of Isaaks and Srivastava (1989,
   * ch. 12), who print 592.7 and 8.96. They write the exponential as 10 exp(-3 h / 10), so that its
   * range here, the a of exp(-h / a), is 10 / 3.
   */
  static Estimate textbook() {
    Observations samples =
        Observations.of(
            new double[] {61, 63, 64, 68, 71, 73, 75},
            new double[] {139, 140, 129, 128, 140, 141, 128},
            new double[] {477, 696, 227, 646, 606, 791, 783});
    NestedModel model = NestedModel.of(0, new Exponential(10, 10 / 3.0));
    return Kriging.ordinary(model).fit(samples).at(65, 137);
  }

  /** Semivariances of pairs up to 14 m apart, in lags 2 m wide. */
  static ExperimentalVariogram variogram(Observations readings) {
    return ExperimentalVariogram.of(
        List.of(readings), new LagBins(14, 2), Estimator.MATHERON, Direction.ALL, 1);
  }

  /** A fit may fail, and says why; so the outcome is one of two things. */
  static NestedModel model(ExperimentalVariogram variogram) {
    FitOutcome outcome = WeightedLeastSquares.of(Shape.SPHERICAL).fit(variogram);
    if (outcome instanceof NotFitted failed) {
      throw new IllegalStateException("no model: " + failed.reason());
    }
    return ((Fitted) outcome).model();
  }

  /** Green G5 of the invented course on 9 July: metres from its centre, % by volume. */
  static Observations readings() {
    double[] x = {
      -4.2, -8.8, -7.9, -4.9, 0.1, 2.0, 6.2, 2.3, -2.6, -5.0, -5.6, -2.9, -0.7, 4.3, 5.4, 6.5, 5.6,
      2.9, -1.0, 2.3, 5.2, 7.6, 7.6, -0.9
    };
    double[] y = {
      -8.8, -7.5, -1.5, -3.9, -4.4, -6.8, -4.2, -2.0, 0.8, 0.6, 0.9, 5.8, 8.9, 8.7, 5.4, 1.0, 0.7,
      3.4, -9.7, -4.2, -7.1, -1.6, 3.1, -1.9
    };
    double[] moisture = {
      20.7, 21.2, 16.5, 19.6, 17.4, 13.6, 9.5, 18.7, 18.3, 16.3, 13.5, 16.8, 18.9, 15.2, 11.0, 10.3,
      12.1, 14.7, 16.5, 13.5, 7.7, 12.0, 10.4, 17.9
    };
    return Observations.of(x, y, moisture);
  }

  private static void print(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}
