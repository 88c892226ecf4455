package org.mottle.engine.adjust;

import java.util.Arrays;
import java.util.Locale;

/**
 * What one operator (with a probe) reads higher than another, from stations both read: the mean of
 * the differences d, with standard error s / √n. The variance of a difference is that of the data
 * and a usual one, {@value #USUAL_SD_PCT} % with {@value #USUAL_FREE} degrees of freedom (common
 * practice, no source), weighted by degrees of freedom, so that two lucky pairs do not look exact.
 *
 * <p>It is corrected for when |d| is above {@value #LEAST_PCT} % and above two standard errors;
 * what is left is the same for all readings of that operator.
 *
 * @param crew whose readings are compared
 * @param reference whose readings they are compared with
 * @param meanPct mean difference, % by volume
 * @param standardError of the mean, % by volume
 * @param pairs stations read by both
 */
public record OperatorOffset(
    String crew, String reference, double meanPct, double standardError, int pairs) {

  /** Standard deviation of the difference of two insertions side by side, % by volume. */
  public static final double USUAL_SD_PCT = 1.7;

  /** What the usual figure is worth, degrees of freedom. */
  public static final int USUAL_FREE = 5;

  /** An offset below this does not matter, % by volume. */
  public static final double LEAST_PCT = 0.5;

  /** Fewer shared stations show no offset. */
  public static final int LEAST_PAIRS = 2;

  /** So many shared stations are recommended. */
  public static final int WANTED_PAIRS = 12;

  /**
   * @param difference [n] crew minus reference at each station both read, % by volume
   */
  public static OperatorOffset of(String crew, String reference, double[] difference) {
    int n = difference.length;
    if (n < LEAST_PAIRS) {
      return new OperatorOffset(crew, reference, Double.NaN, Double.NaN, n);
    }
    double mean = Arrays.stream(difference).average().orElseThrow();
    double squares = Arrays.stream(difference).map(d -> (d - mean) * (d - mean)).sum();
    double usual = USUAL_FREE * USUAL_SD_PCT * USUAL_SD_PCT;
    double variance = (squares + usual) / (n - 1 + USUAL_FREE);
    return new OperatorOffset(crew, reference, mean, Math.sqrt(variance / n), n);
  }

  /** Whether enough stations were shared to tell. */
  public boolean known() {
    return pairs >= LEAST_PAIRS;
  }

  public boolean corrected() {
    return known() && Math.abs(meanPct) > LEAST_PCT && Math.abs(meanPct) > 2 * standardError;
  }

  /** What is taken off every reading of that crew, % by volume. */
  public double correctionPct() {
    return corrected() ? meanPct : 0;
  }

  /** Standard deviation of what is left, the same for all readings of that crew, % by volume. */
  public double leftPct() {
    return corrected() ? standardError : Math.hypot(meanPct, standardError);
  }

  /** "B reads +1.9 % against A (standard error 0.5, 12 stations read by both)". */
  public String words() {
    return known()
        ? String.format(
            Locale.ROOT,
            "%s reads %+.1f %% against %s (standard error %.1f, %d stations read by both)",
            crew,
            meanPct,
            reference,
            standardError,
            pairs)
        : "%s and %s share %d station%s".formatted(crew, reference, pairs, pairs == 1 ? "" : "s");
  }
}
