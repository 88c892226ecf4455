package org.mottle.engine.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.drainage.Indicators.SeenWet;
import org.mottle.engine.survey.WaterHistory;

/**
 * Wet places as the invented course has them: a blocked lateral (excess +7, +10, +5, +4, +8 % by
 * volume in its five surveys), a closed hollow of 54 mm (+8, +4, 0, 0, +8), and the low side of a
 * sound green. Five surveys: 36 h after rain, three days later, after irrigation, in heat, 24 h
 * after a storm.
 */
final class InventedPlaces {
  static final double NONE = Double.NaN;
  static final WetPlace PLACE =
      new WetPlace(
          "G", "1", new GeometryFactory().createPoint(new Coordinate(0, 0)).buffer(5.5), 95, 0.8);

  private static final double[] MEAN = {24, 18.5, 19, 15.5, 25};
  private static final double[] UPPER = {26.5, 22, 22, 18.5, 27};

  private InventedPlaces() {}

  /** Chance of being above the band for an excess seen with a standard deviation of 1.5 %. */
  private static List<SeenWet> surveys(double[] excess, double error) {
    WaterHistory[] history = {
      WaterHistory.AFTER_RAIN,
      WaterHistory.DRYING,
      WaterHistory.AFTER_IRRIGATION,
      WaterHistory.AFTER_IRRIGATION,
      WaterHistory.AFTER_RAIN
    };
    double[] hours = {36, 108, 10, 10, 24};
    List<SeenWet> seen = new ArrayList<>();
    for (int s = 0; s < excess.length; s++) {
      double z = (MEAN[s] + excess[s] + error - UPPER[s]) / 1.5;
      double wet = 0.5 * org.apache.commons.math3.special.Erf.erfc(-z / Math.sqrt(2));
      seen.add(new SeenWet("S" + (s + 1), history[s], hours[s], s == 3, wet));
    }
    return seen;
  }

  private static Indicators.Terrain terrain(
      double share, double fillMm, double percentile, double p, double lowEnd) {
    return new Indicators.Terrain(
        new Indicators.Hollow(share, fillMm, 8),
        new Indicators.Gathering(percentile, p),
        new Indicators.Setting(0.05, NONE, lowEnd));
  }

  /** k_ET 1.8 % a day; the error of R and of the gap as a dry-down of two surveys has it. */
  private static Indicators.Drying drying(double ratio, double gap) {
    return new Indicators.Drying(ratio, 0.25, gap, 1.2);
  }

  static Indicators blockedLateral() {
    return blockedLateral(0, 0, 0);
  }

  static Indicators closedHollow() {
    return closedHollow(0, 0, 0);
  }

  static Indicators soundLowSide() {
    return soundLowSide(0, 0, 0);
  }

  /** Errors in standard deviations. */
  static Indicators blockedLateral(double e, double r, double g) {
    return Indicators.UNKNOWN
        .with(surveys(new double[] {7, 10, 5, 4, 8}, 1.2 * e))
        .with(drying(0.8 / 1.8 + 0.25 * r, 3 + 1.2 * g))
        .with(terrain(0, 0, 0.6, 0.3, 0.8))
        .with(new Indicators.Pipes(4, 2, NONE));
  }

  static Indicators closedHollow(double e, double r, double g) {
    return Indicators.UNKNOWN
        .with(surveys(new double[] {8, 4, 0, 0, 8}, 1.2 * e))
        .with(drying(9.5 / 3 / 1.8 + 0.25 * r, -4 + 1.2 * g))
        .with(terrain(0.4, 54, 0.9, 0.02, 0.5))
        .with(new Indicators.Pipes(6, 2, NONE));
  }

  static Indicators soundLowSide(double e, double r, double g) {
    return Indicators.UNKNOWN
        .with(surveys(new double[] {3, 2.5, 2, 2, 3}, 1.2 * e))
        .with(drying(1 + 0.25 * r, 1.2 * g))
        .with(terrain(0, 0, 0.75, 0.3, 0.8))
        .with(new Indicators.Pipes(5, 2, NONE));
  }

  /** Three independent standard normal errors. */
  static double[] errors(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return new double[] {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
  }
}
