package org.mottle.engine.review;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.moisture.InsertionDepth;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.validation.LeaveOneOut;
import org.mottle.engine.validation.Predictions;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * Readings that fit neither their neighbours nor their station's past. Each is predicted from the
 * others of its visit by ordinary kriging of what differs from the stations' past, leaving it out
 * (Dubrule 1983). Only the shape of the variogram is assumed; the residuals are brought to unit
 * scale by their own median absolute deviation, so the share of sound readings doubted does not
 * hang on its sill. Readings found odd are left out of the prediction of the others and looked at
 * again, until nothing changes: two in one place cannot vouch for each other.
 *
 * <p>A low one is told as a possible partial insertion only when the share of the rods that would
 * explain it is one that happens ({@link InsertionDepth}); a dry spot gives the same reading, and
 * the words say so. Nothing is left out for it.
 */
final class NeighbourCheck {
  /** Range and share of the nugget assumed of the differences, m and 1. */
  private static final double RANGE_M = 12;

  private static final double NUGGET_SHARE = 0.5;

  /** Variance that takes a reading out of the prediction of others. */
  private static final double OUT = 1e4;

  /** So much of a visit at most may be set aside. */
  private static final double MOST_SHARE = 0.25;

  /** What the pooled scale is worth, readings. */
  private static final double POOL_WORTH = 20;

  /** Standardised residual below which a low reading is set aside. */
  private static final double ASIDE_Z = 1.4;

  private static final double MAD = 1.4826;
  private static final int LEAST = 6;

  /** Rods in by less lie on the ground. */
  private static final double LEAST_IN = 0.55;

  /**
   * Rods half out read about a quarter too low (common practice, no source); a reading above this
   * share of what was expected is not told as such.
   */
  private static final double MOST_OF_EXPECTED = 0.84;

  private final ReviewSettings settings;
  private final StationHistory history;
  private final Map<Sheet, Residuals> residuals = new HashMap<>();

  /**
   * Of the rows that count.
   *
   * @param rows which
   * @param z [n] residual over its standard deviation, scale not yet known
   * @param expected [n] what was predicted, % by volume
   * @param out [n] set aside
   * @param scale by the median absolute deviation
   */
  private record Residuals(
      int[] rows, double[] z, double[] expected, boolean[] out, double scale) {}

  NeighbourCheck(List<Sheet> sheets, ReviewSettings settings) {
    this.settings = settings;
    this.history = new StationHistory(sheets);
    for (Sheet sheet : sheets) {
      if (sheet.mappable() && sheet.counting().length >= LEAST) {
        residuals.put(sheet, residuals(sheet));
      }
    }
    double pool =
        residuals.isEmpty()
            ? 1
            : new Median()
                .evaluate(residuals.values().stream().mapToDouble(Residuals::scale).toArray());
    for (Sheet sheet : sheets) {
      if (residuals.containsKey(sheet)) {
        tell(sheet, residuals.get(sheet), pool);
      }
    }
  }

  private Residuals residuals(Sheet sheet) {
    int[] rows = sheet.counting();
    StationHistory.Expected past = history.expected(sheet);
    int n = rows.length;
    double[] difference = new double[n];
    double[] noise = new double[n];
    double usual =
        new Median().evaluate(Arrays.stream(rows).mapToDouble(i -> past.variance()[i]).toArray());
    for (int k = 0; k < n; k++) {
      int i = rows[k];
      difference[k] = sheet.pct[i] - past.level() - past.expected()[i];
      noise[k] = NUGGET_SHARE * usual + Math.max(0, past.variance()[i] - usual);
    }
    Observations all =
        Observations.of(
            Arrays.stream(rows).mapToDouble(i -> sheet.reading(i).x()).toArray(),
            Arrays.stream(rows).mapToDouble(i -> sheet.reading(i).y()).toArray(),
            difference);
    Kriging kriging =
        Kriging.ordinary(NestedModel.of(0, new Spherical((1 - NUGGET_SHARE) * usual, RANGE_M)));
    boolean[] out = new boolean[n];
    double[] z = null;
    double[] predicted = new double[n];
    double scale = 1;
    for (int pass = 0; pass <= MOST_SHARE * n; pass++) {
      z = standardised(kriging, all, noise, out, predicted);
      scale = scale(z, out);
      boolean[] next = next(z, scale, out);
      if (Arrays.equals(next, out)) {
        break;
      }
      out = next;
    }
    for (int k = 0; k < n; k++) {
      predicted[k] += past.level() + past.expected()[rows[k]];
    }
    return new Residuals(rows, z, predicted, out, scale);
  }

  private static double[] standardised(
      Kriging kriging, Observations all, double[] noise, boolean[] out, double[] predicted) {
    double[] variance = noise.clone();
    for (int k = 0; k < variance.length; k++) {
      variance[k] += out[k] ? OUT : 0;
    }
    Predictions loo =
        LeaveOneOut.of(kriging, all.withMeasurementVariance(variance), 1, Progress.NONE);
    double[] z = new double[variance.length];
    for (int k = 0; k < z.length; k++) {
      double own = loo.variance(k) - (out[k] ? OUT : 0);
      predicted[k] = loo.predicted(k);
      z[k] = (all.value(k) - predicted[k]) / Math.sqrt(own);
    }
    return z;
  }

  /** Half a scale is the least: readings that all agree leave no room for doubt otherwise. */
  private static double scale(double[] z, boolean[] out) {
    double[] kept =
        IntStream.range(0, z.length)
            .filter(k -> !out[k])
            .mapToDouble(k -> Math.abs(z[k]))
            .toArray();
    return Math.max(0.5, MAD * new Median().evaluate(kept));
  }

  /** The readings set aside so far that still look odd, and the oddest of the others. */
  private boolean[] next(double[] z, double scale, boolean[] out) {
    boolean[] next = new boolean[z.length];
    int oddest = -1;
    for (int k = 0; k < z.length; k++) {
      boolean odd = z[k] < -ASIDE_Z * scale || z[k] > settings.highZ() * scale;
      next[k] = out[k] && odd;
      if (odd && !out[k] && (oddest < 0 || Math.abs(z[k]) > Math.abs(z[oddest]))) {
        oddest = k;
      }
    }
    if (oddest >= 0) {
      next[oddest] = true;
    }
    return next;
  }

  private boolean odd(double z) {
    return z < settings.lowZ() || z > settings.highZ();
  }

  private void tell(Sheet sheet, Residuals r, double pool) {
    int n = r.rows().length;
    double scale =
        Math.sqrt((n * r.scale() * r.scale() + POOL_WORTH * pool * pool) / (n + POOL_WORTH));
    for (int k = 0; k < n; k++) {
      int i = r.rows()[k];
      double z = r.z()[k] / scale;
      // a point of interest is there because it is odd
      if (!odd(z) || sheet.reading(i).role() == Reading.Role.POINT_OF_INTEREST) {
        continue;
      }
      int[] row = {i};
      double expected = r.expected()[k];
      if (z > 0) {
        sheet.find(
            Rule.HIGH,
            Severity.WARN,
            row,
            String.format(
                Locale.ROOT,
                "%s: %.1f %%, about %.1f %% was to be expected from its neighbours and its past",
                sheet.name(i),
                sheet.pct[i],
                expected),
            "read it again beside the hole; look for fresh hand water, a leak or a ball mark");
        continue;
      }
      double share = share(sheet.pct[i], expected);
      if (share >= LEAST_IN && sheet.pct[i] <= MOST_OF_EXPECTED * expected) {
        sheet.find(
            Rule.INSERTION,
            Severity.WARN,
            row,
            String.format(
                Locale.ROOT,
                "%s: %.1f %%, about %.1f %% was to be expected; rods in the ground by %.0f %% of"
                    + " their length would read so, and so would a dry spot",
                sheet.name(i),
                sheet.pct[i],
                expected,
                100 * share),
            "read it again beside the hole, rods fully in: if it stays low, the ground is dry there");
      }
    }
  }

  private static double share(double pct, double expected) {
    return expected > 0 && pct >= 0 ? InsertionDepth.impliedShare(pct, expected) : Double.NaN;
  }
}
