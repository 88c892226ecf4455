package org.mottle.engine.patch;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/**
 * The Vorob'ev level: the greatest p* for which the ground where the probability is at least p* is
 * no smaller than the expected area, the integral of the probability (Molchanov 2005, Theory of
 * Random Sets; Chevalier, Ginsbourger, Bect and Molchanov 2013). Found by bisection.
 *
 * <p>The area above a level is that of the linear surface that is drawn: every cell is eight
 * triangles, from its centre to its corners and the middles of its sides, in each of which the
 * surface is a plane. Cells covered in part count by the covered share.
 */
final class VorobevLevel {
  private static final int CORNERS = 8;
  private static final int HALVINGS = 48;
  private static final int[] ROW = {-1, -1, 0, 1, 1, 1, 0, -1};
  private static final int[] COLUMN = {0, 1, 1, 1, 0, -1, -1, -1};

  private final GreenGround ground;
  private final double[] centre;
  private final double[] rim;
  private final double[] least;
  private final double[] most;

  VorobevLevel(GreenGround ground, Raster probability) {
    int n = ground.size();
    this.ground = ground;
    this.centre = new double[n];
    this.rim = new double[CORNERS * n];
    this.least = new double[n];
    this.most = new double[n];
    for (int i = 0; i < n; i++) {
      fill(i, probability);
    }
  }

  private void fill(int i, Raster p) {
    CellGrid grid = p.grid();
    int row = ground.cell(i) / grid.columns();
    int column = ground.cell(i) % grid.columns();
    double c = p.value(ground.cell(i));
    centre[i] = c;
    least[i] = c;
    most[i] = c;
    for (int k = 0; k < CORNERS; k++) {
      double value = 0.5 * (c + p.value(row + ROW[k], column + COLUMN[k]));
      if (ROW[k] != 0 && COLUMN[k] != 0) {
        double sides = p.value(row, column + COLUMN[k]) + p.value(row + ROW[k], column);
        value = 0.5 * value + 0.25 * sides;
      }
      rim[CORNERS * i + k] = value;
      // a NaN stays out of the comparison and counts as no ground
      least[i] = value < least[i] ? value : least[i];
      most[i] = value > most[i] ? value : most[i];
    }
  }

  /**
   * @param expectedM2 expected area, m²
   * @return the level, 0 to 1
   */
  double of(double expectedM2) {
    double low = 0;
    double high = 1;
    if (areaAbove(high) >= expectedM2) {
      return high;
    }
    for (int k = 0; k < HALVINGS; k++) {
      double middle = 0.5 * (low + high);
      if (areaAbove(middle) >= expectedM2) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Area of the ground with at least this probability, m². */
  double areaAbove(double level) {
    double area = 0;
    for (int i = 0; i < centre.length; i++) {
      if (least[i] >= level) {
        area += ground.areaM2(i);
      } else if (most[i] > level) {
        area += ground.areaM2(i) * share(i, level);
      }
    }
    return area;
  }

  private double share(int i, double level) {
    double share = 0;
    for (int k = 0; k < CORNERS; k++) {
      double one = rim[CORNERS * i + k];
      double other = rim[CORNERS * i + (k + 1) % CORNERS];
      share += share(centre[i], one, other, level);
    }
    return share / CORNERS;
  }

  /** The share of a triangle above a level, by the values at its corners. */
  private static double share(double a, double b, double c, double level) {
    double low = Math.min(a, Math.min(b, c));
    double high = Math.max(a, Math.max(b, c));
    if (!(level < high)) {
      return 0;
    }
    if (level <= low) {
      return 1;
    }
    double middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    return level <= middle
        ? 1 - (level - low) * (level - low) / ((high - low) * (middle - low))
        : (high - level) * (high - level) / ((high - low) * (high - middle));
  }
}
