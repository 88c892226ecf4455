package org.mottle.engine.season;

import java.util.Arrays;
import org.mottle.engine.check.Check;
import org.mottle.engine.variogram.VariogramModel;

/**
 * One of equally likely models of several surveys of a green:
 *
 * <pre>S(x, t) = σ_t [ √ρ P(x) + √(1 − ρ) F_t(x) ]
 * </pre>
 *
 * P the field that persists, F_t what is new in each survey, all of one correlation R, so that
 * Cov(S(x, s), S(y, t)) = σ_s σ_t R(x − y), times ρ between two surveys. Arrays are copied in and
 * out.
 *
 * @param correlation R as a variogram of partial sill 1
 * @param nugget variance of a station of one insertion at no distance, value²
 * @param sill [surveys] σ_t², value²
 * @param share ρ, 0 to 1
 */
public record JointModel(VariogramModel correlation, double nugget, double[] sill, double share) {

  public JointModel {
    sill = sill.clone();
    if (!correlation.bounded() || correlation.partialSill() != 1) {
      throw new IllegalArgumentException(
          "a correlation needs a variogram that levels off at 1, was " + correlation);
    }
    Check.atLeast("nugget", nugget, 0, "value²");
    for (double s : sill) {
      Check.atLeast("sill of a survey", s, 0, "value²");
    }
    Check.within("share of the field that persists", share, 0, 1, "");
  }

  @Override
  public double[] sill() {
    return sill.clone();
  }

  /** The same with another share that persists. */
  public JointModel withShare(double newShare) {
    return new JointModel(correlation, nugget, sill, newShare);
  }

  /** σ_t of a survey. */
  double sd(int survey) {
    return Math.sqrt(sill[survey]);
  }

  /** Variance of the change from the first survey to the second at one place, value². */
  double changeVariance() {
    return Math.max(0, sill[0] + sill[1] - 2 * share * Math.sqrt(sill[0] * sill[1]));
  }

  @Override
  public String toString() {
    return "JointModel["
        + correlation
        + ", "
        + nugget
        + ", "
        + Arrays.toString(sill)
        + ", "
        + share
        + "]";
  }
}
