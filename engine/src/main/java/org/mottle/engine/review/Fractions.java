package org.mottle.engine.review;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.survey.Refusal;

/** Readings that are fractions where per cent by volume are meant: asked about, never rescaled. */
public final class Fractions {
  /** Fewer values below 1 may be a probe in air. */
  private static final int FEWEST = 3;

  private Fractions() {}

  /**
   * Why a visit cannot be taken for per cent; empty when it can.
   *
   * @param pct the readings that are used, as % by volume
   */
  public static Optional<Refusal> refusal(double[] pct) {
    if (pct.length < FEWEST || !Arrays.stream(pct).allMatch(v -> v < 1)) {
      return Optional.empty();
    }
    DoubleSummaryStatistics all = Arrays.stream(pct).summaryStatistics();
    return Optional.of(
        new Refusal(
            String.format(
                Locale.ROOT,
                "all %d values are below 1 (%.3f to %.3f), as fractions are and not %% by volume",
                pct.length,
                all.getMin(),
                all.getMax()),
            "if they are fractions multiply these rows by 100 in the file; if they are per cent say"
                + " unit: percent in the settings"));
  }
}
