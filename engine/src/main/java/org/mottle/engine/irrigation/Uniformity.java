package org.mottle.engine.irrigation;

import java.util.Arrays;

/**
 * How evenly cans caught. All figures are ratios: the unit of the catches does not matter, as long
 * as it is one.
 *
 * <ul>
 *   <li>DU of the low quarter, of the low half: mean of the lowest quarter (half) / mean (Merriam
 *       and Keller 1978);
 *   <li>CU = 100 (1 - sum |x - m| / (n m)) (Christiansen 1942);
 *   <li>CV = 100 s / m, s with n - 1.
 * </ul>
 *
 * @param n cans
 * @param mean in the unit of the catches
 * @param duLowQuarter 0 to 1
 * @param duLowHalf 0 to 1
 * @param cuPct per cent; below 0 for the most uneven
 * @param cvPct per cent; NaN for a single can
 */
public record Uniformity(
    int n, double mean, double duLowQuarter, double duLowHalf, double cuPct, double cvPct) {

  /**
   * @param catches one or more, 0 or more each, in any order; not all of them 0
   */
  public static Uniformity of(double[] catches, LowQuarter rule) {
    double[] x = catches.clone();
    Arrays.sort(x); // sums in one order, so that the order of the cans does not matter
    double sum = Arrays.stream(x).sum();
    if (x.length == 0 || x[0] < 0 || !(sum > 0) || Double.isInfinite(sum)) {
      throw new IllegalArgumentException(
          "uniformity needs catches of 0 or more, not all 0, was " + Arrays.toString(catches));
    }
    double mean = sum / x.length;
    double deviations = 0;
    double squares = 0;
    for (double value : x) {
      deviations += Math.abs(value - mean);
      squares += (value - mean) * (value - mean);
    }
    return new Uniformity(
        x.length,
        mean,
        Math.min(1, rule.mean(x, 0.25) / mean),
        Math.min(1, rule.mean(x, 0.5) / mean),
        100 * (1 - deviations / sum),
        x.length < 2 ? Double.NaN : 100 * Math.sqrt(squares / (x.length - 1)) / mean);
  }

  /** DU of the low quarter as it is usually read; for rotors, from audit guidelines. */
  public String reading() {
    return duLowQuarter >= 0.8 ? "good" : duLowQuarter >= 0.7 ? "acceptable" : "low";
  }
}
