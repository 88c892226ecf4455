package org.mottle.engine.validation;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether what is said to be so likely is so that often: predictions gathered by the probability
 * they gave, beside the share of the observations that bore it out (Wilks 2011, Statistical Methods
 * in the Atmospheric Sciences, ch. 8).
 *
 * @param bins of equal width over [0, 1], those that hold a prediction
 */
public record Reliability(List<Bin> bins) {
  private static final int BINS = 10;

  /**
   * @param from lower end of the bin
   * @param to upper end
   * @param predictions in it
   * @param stated their mean probability
   * @param found share of them that came true
   */
  public record Bin(double from, double to, int predictions, double stated, double found) {}

  public Reliability {
    bins = List.copyOf(bins);
  }

  /**
   * @param probability [n] what was said
   * @param came [n] whether it was so
   */
  static Reliability of(double[] probability, boolean[] came) {
    int[] count = new int[BINS];
    double[] stated = new double[BINS];
    int[] found = new int[BINS];
    for (int i = 0; i < probability.length; i++) {
      int bin = Math.min(BINS - 1, (int) (probability[i] * BINS));
      count[bin]++;
      stated[bin] += probability[i];
      found[bin] += came[i] ? 1 : 0;
    }
    List<Bin> bins = new ArrayList<>();
    for (int b = 0; b < BINS; b++) {
      if (count[b] > 0) {
        bins.add(
            new Bin(
                b / (double) BINS,
                (b + 1) / (double) BINS,
                count[b],
                stated[b] / count[b],
                found[b] / (double) count[b]));
      }
    }
    return new Reliability(bins);
  }

  /** Largest gap between stated and found among bins of at least so many; NaN without any. */
  public double worst(int predictions) {
    return bins.stream()
        .filter(b -> b.predictions() >= predictions)
        .mapToDouble(b -> Math.abs(b.stated() - b.found()))
        .max()
        .orElse(Double.NaN);
  }
}
