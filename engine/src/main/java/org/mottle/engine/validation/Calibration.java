package org.mottle.engine.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.special.Erf;
import org.mottle.engine.survey.TargetBand;

/**
 * Whether predictions are as sure as they say: each reading predicted from the others of its green
 * and survey. What is predicted is a reading, so its own error is in the interval.
 *
 * @param scores with the coverage of the 90 % interval
 * @param coverage50 of the 50 % interval
 * @param dry reliability of the probability of reading below the band
 * @param wet reliability of the probability of reading above it
 */
public record Calibration(Scores scores, double coverage50, Reliability dry, Reliability wet) {

  /**
   * Predictions of one green and survey.
   *
   * @param predictions with variances
   * @param band of the green, if it has one
   */
  public record Part(Predictions predictions, Optional<TargetBand> band) {}

  /** All parts together, each prediction counting once. */
  public static Calibration of(List<Part> parts) {
    List<Predictions> all = parts.stream().map(Part::predictions).toList();
    return new Calibration(
        Scores.pooled(all, 0.9),
        Scores.pooled(all, 0.5).coverage(),
        reliability(parts, true),
        reliability(parts, false));
  }

  private static Reliability reliability(List<Part> parts, boolean dry) {
    List<double[]> pairs = new ArrayList<>();
    for (Part part : parts) {
      if (part.band().isPresent()) {
        Predictions p = part.predictions();
        TargetBand band = part.band().get();
        double limit = dry ? band.lowPct() : band.highPct();
        for (int i = 0; i < p.size(); i++) {
          double z = (limit - p.predicted(i)) / Math.sqrt(p.variance(i));
          if (!Double.isNaN(z)) {
            double below = 0.5 * Erf.erfc(-z / Math.sqrt(2));
            boolean was = dry ? p.observed(i) < limit : p.observed(i) > limit;
            pairs.add(new double[] {dry ? below : 1 - below, was ? 1 : 0});
          }
        }
      }
    }
    double[] probability = pairs.stream().mapToDouble(v -> v[0]).toArray();
    boolean[] came = new boolean[probability.length];
    for (int i = 0; i < came.length; i++) {
      came[i] = pairs.get(i)[1] == 1;
    }
    return Reliability.of(probability, came);
  }
}
