package org.mottle.engine.evenness;

import org.mottle.engine.grid.CoveredGround;

/**
 * Mean over the driest quarter of the area. Of the cell the quarter ends in only the part that
 * fills it up counts. Selection by parts, O(n) on average; scratch memory of one worker.
 */
final class LowQuarter {
  static final double SHARE = 0.25;

  private final CoveredGround ground;
  private final double[] value;
  private final double[] area;

  LowQuarter(CoveredGround ground) {
    this.ground = ground;
    this.value = new double[ground.size()];
    this.area = new double[ground.size()];
  }

  /**
   * @param values one for each cell at which the surface is wanted
   */
  double mean(double[] values) {
    for (int i = 0; i < value.length; i++) {
      value[i] = values[ground.place(i)];
      area[i] = ground.areaM2(i);
    }
    double wanted = SHARE * ground.areaM2();
    double left = wanted;
    double sum = 0;
    int from = 0;
    int to = value.length;
    while (from < to) {
      double pivot = median(value[from], value[(from + to) >>> 1], value[to - 1]);
      int below = from;
      int above = to;
      double belowArea = 0;
      double belowSum = 0;
      double equalArea = 0;
      for (int i = from; i < above; ) {
        if (value[i] < pivot) {
          belowArea += area[i];
          belowSum += area[i] * value[i];
          swap(i++, below++);
        } else if (value[i] > pivot) {
          swap(i, --above);
        } else {
          equalArea += area[i++];
        }
      }
      if (left < belowArea) {
        to = below;
      } else if (left <= belowArea + equalArea) {
        return (sum + belowSum + (left - belowArea) * pivot) / wanted;
      } else {
        sum += belowSum + equalArea * pivot;
        left -= belowArea + equalArea;
        from = above;
      }
    }
    return sum / wanted;
  }

  private static double median(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }

  private void swap(int i, int j) {
    double v = value[i];
    value[i] = value[j];
    value[j] = v;
    double a = area[i];
    area[i] = area[j];
    area[j] = a;
  }
}
