package org.mottle.engine.fit;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.empirical.ExperimentalVariogram;

/**
 * Tries several models and keeps the one with the least weighted sum of squares; of equals the
 * earlier. The Gaussian is not tried unless it is asked for: its smoothness at the origin is seldom
 * that of a soil, and without a nugget it makes kriging ill-conditioned.
 *
 * @param candidates what is tried, in order of preference
 */
public record AutomaticFit(List<WeightedLeastSquares> candidates) {

  public AutomaticFit {
    candidates = List.copyOf(candidates);
    if (candidates.isEmpty()) {
      throw new IllegalArgumentException("an automatic fit needs at least one candidate, had 0");
    }
  }

  /** A nugget and one of: spherical, exponential, pentaspherical, circular, Matérn 1.5. */
  public static AutomaticFit of(Weighting weighting) {
    return new AutomaticFit(
        List.of(
                Shape.SPHERICAL,
                Shape.EXPONENTIAL,
                Shape.PENTASPHERICAL,
                Shape.CIRCULAR,
                Shape.MATERN)
            .stream()
            .map(shape -> WeightedLeastSquares.of(shape).withWeighting(weighting))
            .toList());
  }

  /** The best outcome; that of the first candidate when none could be fitted. */
  public FitOutcome fit(ExperimentalVariogram variogram) {
    List<FitOutcome> outcomes = new ArrayList<>();
    Fitted best = null;
    int evaluations = 0;
    for (WeightedLeastSquares candidate : candidates) {
      FitOutcome outcome = candidate.fit(variogram);
      outcomes.add(outcome);
      if (outcome instanceof Fitted fitted) {
        evaluations += fitted.evaluations();
        if (best == null || fitted.weightedSse() < best.weightedSse()) {
          best = fitted;
        }
      }
    }
    return best == null
        ? outcomes.get(0)
        : new Fitted(best.model(), best.weightedSse(), evaluations, best.notes());
  }
}
