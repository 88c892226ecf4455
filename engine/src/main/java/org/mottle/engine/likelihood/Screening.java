package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * The samples that enter the likelihood. A probe held in air would set the variogram of a whole
 * course: a value farther than {@value #FURTHEST} robust standard deviations (1.4826 times the
 * median absolute deviation) from the median of its green stays out of the variogram; with few
 * readings the deviation is itself uncertain and the limit wider, by 1 + 40/n². It is still mapped:
 * whether it is a fault of the reading or of the ground is not for the variogram to say. Out of
 * normal readings the limit takes one from about one sample of 100.
 *
 * @param samples with contrasts that vary, at more than one place
 * @param notes what was left out, in words
 */
record Screening(List<Sample> samples, List<String> notes) {
  static final double FURTHEST = 6;

  private static final double FEW = 40;

  static Screening of(List<Sample> all) {
    List<Sample> kept = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    for (Sample sample : all) {
      Sample rest = withoutFar(sample);
      int out = sample.size() - rest.size();
      if (out > 0) {
        notes.add(
            String.format(
                Locale.ROOT,
                "%d reading%s of green %s%s far from all others there kept out of the variogram",
                out,
                out == 1 ? "" : "s",
                sample.green(),
                sample.survey().isEmpty() ? "" : " in " + sample.survey()));
      }
      if (Contrasts.count(rest) > 0 && varies(rest)) {
        kept.add(rest);
      }
    }
    return new Screening(kept, notes);
  }

  private static boolean varies(Sample sample) {
    return Arrays.stream(sample.observations().values()).distinct().count() > 2
        && Spread.of(sample.observations()).diagonal() > 0
        && Contrasts.of(sample).sumOfSquares() > 0;
  }

  static Sample withoutFar(Sample sample) {
    int[] near = near(sample.observations().values());
    return near.length < sample.size() ? sample.rows(near) : sample;
  }

  private static int[] near(double[] values) {
    double median = median(values);
    double mad = median(Arrays.stream(values).map(v -> Math.abs(v - median)).toArray());
    double n = values.length;
    double limit = FURTHEST * (1 + FEW / (n * n)) * 1.4826 * mad;
    return IntStream.range(0, values.length)
        .filter(i -> mad == 0 || Math.abs(values[i] - median) <= limit)
        .toArray();
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
