package org.mottle.engine.survey;

/**
 * An error that readings of a visit have in common: what an operator reads too high, the drying
 * that was not seen. Immutable; the array is copied in and out.
 *
 * @param what in words, "operator B"
 * @param share [n] how much of it each reading of the visit carries, -1 to 1, in their order
 * @param variance of the error, % by volume squared
 */
public record SharedError(String what, double[] share, double variance) {
  public SharedError {
    share = share.clone();
  }

  @Override
  public double[] share() {
    return share.clone();
  }
}
