package org.mottle.engine.mapping;

import java.util.Arrays;
import org.apache.commons.math3.util.KthSelector;
import org.mottle.engine.grid.Raster;

/**
 * How even the moisture of a surface is, over the cells whose centre is inside the green, each
 * counted once. With m their mean:
 *
 * <pre>low quarter    mean of the driest quarter of the cells / m
 * uniformity     100 (1 - mean of |v - m| / m)</pre>
 *
 * The forms are those of the distribution uniformity and of Christiansen's coefficient
 * (Christiansen 1942, from memory), here of moisture in the ground and not of water caught: a
 * smooth map is more even than the ground is. NaN where no cell has its centre inside.
 *
 * @param lowQuarter share, 1 when even
 * @param uniformityPct %, 100 when even
 */
public record Evenness(double lowQuarter, double uniformityPct) {

  /** One pass and a selection: O(n) in the cells. */
  public static Evenness of(Raster surface) {
    double[] values = Arrays.stream(surface.values()).filter(v -> !Double.isNaN(v)).toArray();
    if (values.length == 0) {
      return new Evenness(Double.NaN, Double.NaN);
    }
    double mean = mean(values);
    int quarter = (values.length + 3) / 4;
    double limit = new KthSelector().select(values.clone(), null, quarter - 1);
    double low = 0;
    int below = 0;
    double deviation = 0;
    for (double v : values) {
      deviation += Math.abs(v - mean);
      if (v < limit) {
        low += v;
        below++;
      }
    }
    // cells equal to the limit fill the quarter up
    low += (quarter - below) * limit;
    return new Evenness(low / quarter / mean, 100 * (1 - deviation / values.length / mean));
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    return sum / values.length;
  }
}
