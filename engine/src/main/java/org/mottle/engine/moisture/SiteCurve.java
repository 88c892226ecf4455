package org.mottle.engine.moisture;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.mottle.engine.survey.SharedError;

/**
 * A probe's readings against cores of the same places: θ = a + b (reading - mean reading) by least
 * squares. Immutable.
 *
 * @param meanRaw mean of the readings, % by volume
 * @param atMean a, % by volume
 * @param slope b
 * @param residualSd s, standard deviation about the line, % by volume, n - 2 degrees of freedom
 * @param squares Σ (reading - mean)²
 * @param cores n
 * @param lowRaw least reading, % by volume
 * @param highRaw greatest reading, % by volume
 */
public record SiteCurve(
    double meanRaw,
    double atMean,
    double slope,
    double residualSd,
    double squares,
    int cores,
    double lowRaw,
    double highRaw) {
  /** Fewer cores make no curve (common practice, no source). */
  public static final int LEAST_CORES = 6;

  /**
   * @param raw [n] readings beside the cores, % by volume
   * @param core [n] moisture of the cores, % by volume
   * @throws IllegalArgumentException for fewer than {@value #LEAST_CORES} cores, or readings that
   *     are all alike
   */
  public static SiteCurve of(double[] raw, double[] core) {
    int n = raw.length;
    if (n != core.length || n < LEAST_CORES) {
      throw new IllegalArgumentException(
          "a site curve needs %d cores or more, each with a reading; were %d readings and %d cores"
              .formatted(LEAST_CORES, n, core.length));
    }
    double mean = Arrays.stream(raw).average().orElseThrow();
    double meanCore = Arrays.stream(core).average().orElseThrow();
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    for (int i = 0; i < n; i++) {
      sxx += (raw[i] - mean) * (raw[i] - mean);
      sxy += (raw[i] - mean) * (core[i] - meanCore);
      syy += (core[i] - meanCore) * (core[i] - meanCore);
    }
    if (!(sxx > 0)) {
      throw new IllegalArgumentException("the readings beside the cores are all " + raw[0]);
    }
    double slope = sxy / sxx;
    double sd = Math.sqrt(Math.max(0, syy - slope * sxy) / (n - 2));
    return new SiteCurve(
        mean,
        meanCore,
        slope,
        sd,
        sxx,
        n,
        Arrays.stream(raw).min().orElseThrow(),
        Arrays.stream(raw).max().orElseThrow());
  }

  /** Moisture of a reading, % by volume. */
  public double pct(double raw) {
    return atMean + slope * (raw - meanRaw);
  }

  /** Standard error of the line there: s √(1/n + (raw - mean)²/Σ), % by volume. */
  public double standardError(double raw) {
    double off = raw - meanRaw;
    return residualSd * Math.sqrt(1.0 / cores + off * off / squares);
  }

  /** Half width of the interval for one more core beside a reading, % by volume. */
  public double predictionHalfWidth(double raw, double level) {
    double se = standardError(raw);
    return new TDistribution(null, cores - 2).inverseCumulativeProbability(0.5 + level / 2)
        * Math.sqrt(residualSd * residualSd + se * se);
  }

  /** Whether a reading lies beyond those the curve was made from. */
  public boolean extrapolates(double raw) {
    return raw < lowRaw || raw > highRaw;
  }

  /**
   * The error of the line as readings have it in common: that of its height, the same for all, and
   * that of its slope, as far as a reading is from the mean of the cores.
   */
  public List<SharedError> errors(double[] raw) {
    double variance = residualSd * residualSd;
    double[] even = new double[raw.length];
    Arrays.fill(even, 1);
    double reach = Arrays.stream(raw).map(r -> Math.abs(r - meanRaw)).max().orElse(0);
    double[] tilt = Arrays.stream(raw).map(r -> reach > 0 ? (r - meanRaw) / reach : 0).toArray();
    return List.of(
        new SharedError("height of the site curve", even, variance / cores),
        new SharedError("slope of the site curve", tilt, variance / squares * reach * reach));
  }
}
