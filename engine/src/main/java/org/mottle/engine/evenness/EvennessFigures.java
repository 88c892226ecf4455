package org.mottle.engine.evenness;

/**
 * How even one surface is over a piece of ground, every place counted by its area. With v the
 * moisture, m its mean over the ground A, and w wilt onset:
 *
 * <pre>sd             √(∫(v - m)² / A)
 * low quarter    mean of v over the driest quarter of A / m
 * of available   (mean over the driest quarter - w) / (m - w)
 * uniformity     100 (1 - ∫|v - m| / (A m))</pre>
 *
 * The forms are those of the distribution uniformity of the low quarter and of the coefficient of
 * Christiansen (1942), here of moisture in the ground: neither says how evenly water was applied.
 *
 * @param mean % by volume
 * @param sd % by volume
 * @param lowQuarter share, 1 when even
 * @param lowQuarterAvailable the same of the water that plants can draw; NaN without wilt onset, or
 *     where the mean does not lie above it
 * @param uniformityPct %, 100 when even
 * @param dryShare share of the ground below the band; NaN without a band
 * @param wetShare share above it
 */
public record EvennessFigures(
    double mean,
    double sd,
    double lowQuarter,
    double lowQuarterAvailable,
    double uniformityPct,
    double dryShare,
    double wetShare) {

  /** Coefficient of variation, %. */
  public double variationPct() {
    return 100 * sd / mean;
  }

  /** Share of the ground in the band. */
  public double bandShare() {
    return 1 - dryShare - wetShare;
  }
}
