package org.mottle.engine.likelihood;

import org.mottle.engine.check.Check;

/**
 * What is assumed of a variogram before any reading: a log-normal practical range and a
 * logit-normal share of the nugget in the sill. Where the variogram is borrowed both enter as they
 * stand. Elsewhere only the range's does, with its spread 1.4 times as wide: small greens set
 * hardly any upper limit to a range. Nine simulated greens of 24 m with 18 stations each know the
 * logarithm of the range to 0.7 or so; at its own spread the prior then left 70 % of the 90 %
 * intervals right for a true range of 6 m and 42 % for 25 m, its own ends (60 pools).
 *
 * @param rangeM median of the practical range, m
 * @param rangeSpread standard deviation of its logarithm
 * @param nuggetShare median of nugget / sill
 * @param shareSpread standard deviation of its logit
 */
public record VariogramPrior(
    double rangeM, double rangeSpread, double nuggetShare, double shareSpread) {

  private static final double Z90 = 1.6449;

  private static final double VAGUE_RANGE = 3;
  private static final double VAGUE_SHARE = 5;

  /** By how much the spread of the range is wider where the variogram is not borrowed. */
  private static final double WIDER = 1.4;

  /**
   * Putting greens: range 12 m (90 % between 6 and 25), share 0.35 (0.15 to 0.6). No variogram of
   * moisture on putting greens is published; scaled from fairways, where Krum et al. (2010, Crop
   * Science 50, 301) saw 11.7 m and more, and from the size of a green. An assumption, to be
   * overridden by what readings say.
   */
  public static final VariogramPrior PUTTING_GREENS = between(12, 6, 25, 0.35, 0.15, 0.60);

  public VariogramPrior {
    Check.above("prior range", rangeM, 0, "m");
    Check.above("spread of the prior range", rangeSpread, 0, "");
    Check.above("prior nugget share", nuggetShare, 0, "");
    Check.above("spread of the prior nugget share", shareSpread, 0, "");
  }

  /** From medians and the ends of intervals of 90 %. */
  public static VariogramPrior between(
      double range, double rangeLow, double rangeHigh, double share, double low, double high) {
    return new VariogramPrior(
        range,
        Math.log(rangeHigh / rangeLow) / (2 * Z90),
        share,
        (logit(high) - logit(low)) / (2 * Z90));
  }

  /** The same with a range and a share that are hardly known: of ground that is no green. */
  public VariogramPrior vague() {
    return new VariogramPrior(rangeM, VAGUE_RANGE, nuggetShare, VAGUE_SHARE);
  }

  /**
   * Logarithm of the density of log range, but for a constant.
   *
   * @param borrowed whether the prior enters as it stands, else with a wider spread
   */
  double logOfRange(double practicalRange, boolean borrowed) {
    double z = Math.log(practicalRange / rangeM) / (borrowed ? rangeSpread : WIDER * rangeSpread);
    return -0.5 * z * z;
  }

  /**
   * Logarithm of the density of the logit of a survey's share, but for a constant.
   *
   * @param borrowed whether the prior enters as it stands, else with a wider spread
   */
  double logOfShare(double share, boolean borrowed) {
    double spread = borrowed ? shareSpread : WIDER * shareSpread;
    double z = (logit(share) - logit(nuggetShare)) / spread;
    return -0.5 * z * z;
  }

  private static double logit(double share) {
    return Math.log(share / (1 - share));
  }
}
