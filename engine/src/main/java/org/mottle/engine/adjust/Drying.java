package org.mottle.engine.adjust;

import java.util.Arrays;
import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How fast the ground dried while a survey lasted, from control stations read again and again: one
 * slope for all, a mean for each station, by least squares,
 *
 * <p>slope = Σ (t - t̄)(v - v̄) / Σ (t - t̄)², t̄ and v̄ those of the reading's own station,
 *
 * <p>with the standard error of its residuals, n - stations - 1 degrees of freedom.
 *
 * <p>It is corrected for only where it matters and is seen: when the change over the survey is
 * above {@value #LEAST_PCT} % and the slope above two standard errors (common practice, no source).
 * Otherwise the change that may have been missed is carried as an error in common.
 *
 * @param slopePctH % by volume an hour; below 0 where the ground dries
 * @param standardError of the slope, % by volume an hour
 * @param hours from the first to the last reading of the survey
 * @param readings of control stations behind it
 * @param stations control stations behind it
 */
public record Drying(
    double slopePctH, double standardError, double hours, int readings, int stations) {

  /** A change below this over a survey does not matter, % by volume. */
  public static final double LEAST_PCT = 0.5;

  /**
   * @param hour [n] time of each control reading, h
   * @param pct [n] its value, % by volume
   * @param station [n] which control station, from 0
   * @param hours from the first to the last reading of the survey
   * @return the slope; all NaN where the readings cannot show one
   */
  public static Drying of(double[] hour, double[] pct, int[] station, double hours) {
    int n = hour.length;
    int stations = Arrays.stream(station).max().orElse(-1) + 1;
    double[] meanHour = new double[stations];
    double[] meanPct = new double[stations];
    int[] count = new int[stations];
    for (int i = 0; i < n; i++) {
      count[station[i]]++;
      meanHour[station[i]] += hour[i];
      meanPct[station[i]] += pct[i];
    }
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    for (int i = 0; i < n; i++) {
      int s = station[i];
      double t = hour[i] - meanHour[s] / count[s];
      double v = pct[i] - meanPct[s] / count[s];
      sxx += t * t;
      sxy += t * v;
      syy += v * v;
    }
    int free = n - stations - 1;
    if (free < 2 || !(sxx > 0)) {
      return new Drying(Double.NaN, Double.NaN, hours, n, stations);
    }
    double slope = sxy / sxx;
    double residual = Math.max(0, syy - slope * sxy) / free;
    return new Drying(slope, Math.sqrt(residual / sxx), hours, n, stations);
  }

  /** Whether the control readings could show a slope at all. */
  public boolean known() {
    return !Double.isNaN(slopePctH);
  }

  /** Whether readings are to be corrected for it. */
  public boolean corrected() {
    return known()
        && Math.abs(slopePctH * hours) > LEAST_PCT
        && Math.abs(slopePctH) > 2 * standardError;
  }

  /** What is taken off a reading {@code afterH} hours after the first, % by volume. */
  public double correction(double afterH) {
    return corrected() ? slopePctH * afterH : 0;
  }

  /**
   * Standard deviation of what is left at the end of the survey, growing evenly from its start, %
   * by volume: of the correction, or of the change that was not corrected for.
   */
  public double leftAtEndPct() {
    return corrected() ? standardError * hours : Math.hypot(slopePctH, standardError) * hours;
  }

  /** Two-sided 95 % limits of the slope: how far either side, % by volume an hour. */
  public double halfWidth() {
    return new TDistribution(null, readings - stations - 1).inverseCumulativeProbability(0.975)
        * standardError;
  }

  /** "-0.35 % an hour (standard error 0.05), from 40 readings of 2 control stations". */
  public String words() {
    return String.format(
        Locale.ROOT,
        "%+.2f %% an hour (standard error %.2f), from %d readings of %d control station%s",
        slopePctH,
        standardError,
        readings,
        stations,
        stations == 1 ? "" : "s");
  }
}
