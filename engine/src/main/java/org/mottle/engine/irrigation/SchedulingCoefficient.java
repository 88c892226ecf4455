package org.mottle.engine.irrigation;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/**
 * SC = mean / mean of the driest contiguous square window of a share of the area, all of it on the
 * ground. 1 is even. Windows that tile the ground keep it at 1 or more; a value below 1 can only
 * come where ground that no window fits on is the driest.
 */
public final class SchedulingCoefficient {
  /** Of inverse distance: the cans themselves are met, nothing is extrapolated beyond them. */
  private static final double POWER = 2;

  private static final int FEWEST_CANS = 4;
  private static final int FEWEST_CELLS = 4;
  private static final double WIDEST_CELL_M = 0.5;

  /** A cell covered but for rounding is covered. */
  private static final double WHOLE = 1 - 1e-9;

  private SchedulingCoefficient() {}

  /**
   * On a raster: windows of {@code side} x {@code side} cells that all have a value, the mean over
   * all cells with one. Refused where no window has.
   */
  public static Scheduling of(Raster raster, int side) {
    double[] values = raster.values();
    boolean[] whole = new boolean[values.length];
    double sum = 0;
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      whole[i] = raster.has(i);
      sum += whole[i] ? values[i] : 0;
      n += whole[i] ? 1 : 0;
    }
    double share = n == 0 ? Double.NaN : (double) side * side / n;
    return driest(raster.grid(), values, whole, side, share, sum / n);
  }

  /**
   * On the surface through cans by inverse distance (power 2), window side √(share · area), its
   * place to a quarter of that and 0.5 m at most; the mean is the surface's over the outline.
   *
   * @param catches one a can, in one unit
   */
  public static Scheduling of(
      Geometry outline, List<CatchCan> cans, double[] catches, double share) {
    long lost = cans.stream().filter(c -> !c.hasPlace()).count();
    if (lost > 0) {
      return Scheduling.refused(
          share,
          lost + " of " + cans.size() + " cans have no place",
          "record where every can stood");
    }
    if (cans.size() < FEWEST_CANS) {
      return Scheduling.refused(
          share, cans.size() + " cans show no driest window", "set out 20 cans or more");
    }
    double side = Math.sqrt(share * outline.getArea());
    int cells = Math.max(FEWEST_CELLS, (int) Math.ceil(side / WIDEST_CELL_M));
    CellGrid grid = CellGrid.covering(outline.getEnvelopeInternal(), side / cells);
    CellCoverage ground = CellCoverage.of(outline, grid);
    double[] surface = surface(ground, cans, catches);
    double[] values = new double[grid.size()];
    boolean[] whole = new boolean[grid.size()];
    double sum = 0;
    double area = 0;
    for (int i = 0; i < ground.size(); i++) {
      values[ground.cell(i)] = surface[i];
      whole[ground.cell(i)] = ground.areaM2(i) >= WHOLE * grid.cell() * grid.cell();
      sum += ground.areaM2(i) * surface[i];
      area += ground.areaM2(i);
    }
    return driest(grid, values, whole, cells, share, sum / area);
  }

  private static double[] surface(CellCoverage ground, List<CatchCan> cans, double[] catches) {
    double[] x = new double[ground.size()];
    double[] y = new double[ground.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = ground.x(i);
      y[i] = ground.y(i);
    }
    // in one order, so that the order of the cans does not matter
    Integer[] order = new Integer[catches.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(
        order,
        (a, b) -> {
          int byX = Double.compare(cans.get(a).x(), cans.get(b).x());
          int byY = byX != 0 ? byX : Double.compare(cans.get(a).y(), cans.get(b).y());
          return byY != 0 ? byY : Double.compare(catches[a], catches[b]);
        });
    Observations observed =
        Observations.of(
            Arrays.stream(order).mapToDouble(i -> cans.get(i).x()).toArray(),
            Arrays.stream(order).mapToDouble(i -> cans.get(i).y()).toArray(),
            Arrays.stream(order).mapToDouble(i -> catches[i]).toArray());
    return InverseDistance.ofPower(POWER)
        .estimate(observed, Targets.of(x, y), 1, Progress.NONE)
        .values();
  }

  private static Scheduling driest(
      CellGrid grid, double[] values, boolean[] whole, int side, double share, double mean) {
    double least = Double.POSITIVE_INFINITY;
    int atRow = -1;
    int atColumn = -1;
    for (int row = 0; row + side <= grid.rows(); row++) {
      for (int column = 0; column + side <= grid.columns(); column++) {
        double window = window(grid, values, whole, side, row, column);
        if (window < least) {
          least = window;
          atRow = row;
          atColumn = column;
        }
      }
    }
    double sideM = side * grid.cell();
    if (atRow < 0) {
      return Scheduling.refused(
          share,
          String.format(
              java.util.Locale.ROOT, "no square of %.1f m lies wholly on this ground", sideM),
          "take a smaller share of the area");
    }
    if (!(least > 0)) {
      return Scheduling.refused(
          share, "the driest window caught nothing", "look at the heads that should reach it");
    }
    return new Scheduling(
        share,
        mean / least,
        sideM,
        grid.west() + (atColumn + 0.5 * side) * grid.cell(),
        grid.north() - (atRow + 0.5 * side) * grid.cell(),
        Optional.empty());
  }

  /** NaN where a cell of the window is not wholly ground. */
  private static double window(
      CellGrid grid, double[] values, boolean[] whole, int side, int row, int column) {
    double sum = 0;
    for (int r = row; r < row + side; r++) {
      for (int c = column; c < column + side; c++) {
        int cell = grid.index(r, c);
        if (!whole[cell]) {
          return Double.NaN;
        }
        sum += values[cell];
      }
    }
    return sum / ((double) side * side);
  }
}
