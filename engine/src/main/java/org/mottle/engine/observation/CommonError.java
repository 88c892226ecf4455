package org.mottle.engine.observation;

import org.mottle.engine.check.Check;

/**
 * An error that observations share, same sign and size: the offset of an operator or a probe. It
 * adds share_i share_j variance to the covariance of observations i and j and nothing to that with
 * the soil. Immutable; the array is copied in and out.
 *
 * @param share [n] how much of the error each observation carries: 1 for those that share it, 0 for
 *     the others, between them for a mean of both, below 0 where it has the other sign
 * @param variance variance of the error, value²
 */
public record CommonError(double[] share, double variance) {

  public CommonError {
    share = share.clone();
    for (int i = 0; i < share.length; i++) {
      Check.within("share of observation " + (i + 1) + " in a common error", share[i], -1, 1, "");
    }
    Check.atLeast("variance of a common error", variance, 0, "value²");
  }

  /**
   * @param members [n] which observations share the error
   */
  public static CommonError of(boolean[] members, double variance) {
    double[] share = new double[members.length];
    for (int i = 0; i < share.length; i++) {
      share[i] = members[i] ? 1 : 0;
    }
    return new CommonError(share, variance);
  }

  @Override
  public double[] share() {
    return share.clone();
  }

  /** Share of observation {@code i}. */
  public double share(int i) {
    return share[i];
  }

  public int size() {
    return share.length;
  }
}
