package org.mottle.engine.likelihood;

import java.util.List;
import org.mottle.engine.check.Check;

/**
 * How a pooled variogram is found.
 *
 * @param candidates shapes that are tried
 * @param prior what is assumed before any reading
 * @param fewest with fewer stations than this in the pool, those of repeated surveys discounted by
 *     the design effect, the variogram is borrowed: the prior of the nugget share enters too
 * @param draws how many sets of parameters are drawn
 */
public record LikelihoodSettings(
    List<Candidate> candidates, VariogramPrior prior, int fewest, int draws) {

  public LikelihoodSettings {
    candidates = List.copyOf(candidates);
    if (candidates.isEmpty()) {
      throw new IllegalArgumentException("a variogram needs a shape to try, was given none");
    }
    Check.atLeast("draws of the parameters", draws, 1, "");
  }

  public static LikelihoodSettings defaults() {
    return new LikelihoodSettings(Candidate.DEFAULTS, VariogramPrior.PUTTING_GREENS, 60, 25);
  }

  public LikelihoodSettings withCandidates(List<Candidate> newCandidates) {
    return new LikelihoodSettings(newCandidates, prior, fewest, draws);
  }

  public LikelihoodSettings withDraws(int newDraws) {
    return new LikelihoodSettings(candidates, prior, fewest, newDraws);
  }
}
