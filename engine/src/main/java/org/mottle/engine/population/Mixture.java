package org.mottle.engine.population;

/**
 * A mixture of two normal populations with a common variance: in survey s a value comes from N(mu_s
 * - depth_s, sigma²) with probability {@code share}, else from N(mu_s, sigma²).
 *
 * <p>Immutable.
 */
public final class Mixture {

  /** Whether all surveys have the same difference between the two means. */
  public enum Depth {
    /** One difference for all surveys. */
    COMMON,
    /** Every survey has its own. */
    BY_SURVEY
  }

  private final Depth kind;
  private final double[] upper;
  private final double[] depth;
  private final double sigma;
  private final double share;
  private final double logLikelihood;

  Mixture(
      Depth kind,
      double[] upper,
      double[] depth,
      double sigma,
      double share,
      double logLikelihood) {
    this.kind = kind;
    this.upper = upper;
    this.depth = depth;
    this.sigma = sigma;
    this.share = share;
    this.logLikelihood = logLikelihood;
  }

  public Depth kind() {
    return kind;
  }

  public int surveys() {
    return upper.length;
  }

  /** Mean of the upper population in a survey, % by volume. */
  public double upperMean(int survey) {
    return upper[survey];
  }

  /** Mean of the lower population in a survey, % by volume. */
  public double lowerMean(int survey) {
    return upper[survey] - depth[survey];
  }

  /** By how much the lower mean lies below the upper, % by volume; never negative. */
  public double depth(int survey) {
    return depth[survey];
  }

  /** Standard deviation within each population, % by volume. */
  public double sigma() {
    return sigma;
  }

  /** Share of the lower population among the stations it was fitted to. */
  public double share() {
    return share;
  }

  public double logLikelihood() {
    return logLikelihood;
  }

  /** Number of parameters: means, depths, share and sigma. */
  public int parameters() {
    return upper.length + (kind == Depth.COMMON ? 1 : depth.length) + 2;
  }

  /** |mu1 - mu2| / sigma of one survey. */
  public double separation(int survey) {
    return depth[survey] / sigma;
  }

  /** The probability that a value comes from the lower population, where its prior is this. */
  public double membership(int survey, double value, double prior) {
    double high = (value - upper[survey]) / sigma;
    double low = high + depth[survey] / sigma;
    double logOdds = Math.log(prior) - Math.log1p(-prior) + (high * high - low * low) / 2;
    return 1 / (1 + Math.exp(-logOdds));
  }
}
