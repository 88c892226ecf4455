package org.mottle.engine.fit;

import java.util.Arrays;
import java.util.List;
import org.mottle.engine.empirical.ExperimentalVariogram;

/**
 * What is to be fitted: a nugget and any number of nested structures, with the weighting of the
 * lags. The fit minimises sum w (g - m)² over all of them (Cressie 1985; Webster & Oliver 2007, ch.
 * 6).
 *
 * <p>There is no starting model, so none can mislead it. Given the ranges (and kappa, azimuth,
 * ratio) the nugget and the partial sills follow exactly by least squares between their bounds;
 * what remains is scanned over the whole of its bounds, and each valley found is followed to its
 * bottom. Lags and semivariances are scaled inside. A range that is free is sought between a tenth
 * of the shortest and a hundred times the longest lag, a free kappa in [0.2, 5], a free exponent in
 * [0.02, 1.98], a free ratio in [0.05, 1].
 *
 * <p>Deterministic. Cost: a few hundred evaluations for one structure, some thousands for two.
 *
 * @param weighting what a lag counts for
 * @param nugget c0, value²
 * @param structures nested structures; none for a pure nugget
 */
public record WeightedLeastSquares(
    Weighting weighting, Parameter nugget, List<StructureSpec> structures) {

  public WeightedLeastSquares {
    structures = List.copyOf(structures);
    if (structures.isEmpty() && nugget.isFixed()) {
      throw new IllegalArgumentException(
          "nothing to fit: no structures and a nugget fixed at " + nugget.lower());
    }
  }

  /** A free nugget and free structures, weighted by pairs over squared lag. */
  public static WeightedLeastSquares of(Shape... shapes) {
    return of(Arrays.stream(shapes).map(StructureSpec::of).toArray(StructureSpec[]::new));
  }

  /** A free nugget and these structures, weighted by pairs over squared lag. */
  public static WeightedLeastSquares of(StructureSpec... structures) {
    return new WeightedLeastSquares(
        Weighting.PAIRS_OVER_LAG_SQUARED, Parameter.FREE, List.of(structures));
  }

  public WeightedLeastSquares withWeighting(Weighting newWeighting) {
    return new WeightedLeastSquares(newWeighting, nugget, structures);
  }

  public WeightedLeastSquares withNugget(Parameter newNugget) {
    return new WeightedLeastSquares(weighting, newNugget, structures);
  }

  /** Fits; a variogram that cannot carry the model gives a reason instead. */
  public FitOutcome fit(ExperimentalVariogram variogram) {
    String obstacle = obstacle(variogram);
    if (obstacle != null) {
      return new NotFitted(obstacle);
    }
    FitProblem problem = new FitProblem(this, variogram);
    double[] best = new Search(problem).best();
    return new Verdict(this, variogram, problem).on(best);
  }

  private String obstacle(ExperimentalVariogram variogram) {
    int lags = variogram.lags().size();
    if (lags == 0) {
      return "no lag holds a pair of observations; use a longer cutoff";
    }
    if (variogram.lags().stream().allMatch(lag -> lag.semivariance() == 0)) {
      return "all semivariances are 0: the values of every pair are equal";
    }
    if (structures.stream().anyMatch(s -> !s.isotropic())
        && variogram.lags().stream().anyMatch(lag -> lag.direction().omnidirectional())) {
      return "anisotropy needs variograms of several directions; this one counts all directions"
          + " together";
    }
    int free = freeParameters();
    if (lags < free) {
      return lags
          + (lags == 1 ? " lag" : " lags")
          + " cannot carry "
          + free
          + " free parameters; fix some of them, or use narrower lags or a longer cutoff";
    }
    return null;
  }

  /** Number of parameters the fit may choose. */
  int freeParameters() {
    int free = nugget.isFixed() ? 0 : 1;
    for (StructureSpec s : structures) {
      for (Parameter p : List.of(s.partialSill(), s.range(), s.kappa(), s.azimuth(), s.ratio())) {
        free += p.isFixed() ? 0 : 1;
      }
    }
    return free;
  }
}
