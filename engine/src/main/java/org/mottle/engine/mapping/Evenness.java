package org.mottle.engine.mapping;

import java.util.Arrays;
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

  /** O(n log n) in the cells. */
  public static Evenness of(Raster surface) {
    double[] sorted = Arrays.stream(surface.values()).filter(v -> !Double.isNaN(v)).toArray();
    Arrays.sort(sorted);
    double mean = Arrays.stream(sorted).average().orElse(Double.NaN);
    int quarter = (sorted.length + 3) / 4;
    double low = Arrays.stream(sorted, 0, quarter).average().orElse(Double.NaN);
    double deviation =
        Arrays.stream(sorted).map(v -> Math.abs(v - mean)).average().orElse(Double.NaN);
    return new Evenness(low / mean, 100 * (1 - deviation / mean));
  }
}
