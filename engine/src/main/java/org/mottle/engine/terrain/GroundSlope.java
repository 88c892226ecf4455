package org.mottle.engine.terrain;

import java.util.stream.IntStream;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/**
 * Slope and aspect by the weights of Horn (1981, Proceedings of the IEEE 69): with the nine heights
 *
 * <pre>
 *   a b c
 *   d e f     dz/dx = ((c + 2f + i) - (a + 2d + g)) / 8 cell   (east)
 *   g h i     dz/dy = ((a + 2b + c) - (g + 2h + i)) / 8 cell   (north)
 * </pre>
 *
 * tan beta = sqrt(dz/dx² + dz/dy²); the aspect is where the ground falls to, degrees clockwise from
 * grid north in [0, 360), NaN where it is level. Cells without all eight neighbours have neither.
 * Immutable.
 */
public final class GroundSlope {
  private final CellGrid grid;
  private final double[] east;
  private final double[] north;

  private GroundSlope(CellGrid grid, double[] east, double[] north) {
    this.grid = grid;
    this.east = east;
    this.north = north;
  }

  public static GroundSlope of(ElevationModel model) {
    CellGrid grid = model.grid();
    double[] east = new double[grid.size()];
    double[] north = new double[grid.size()];
    IntStream.range(0, grid.rows())
        .parallel()
        .forEach(row -> row(model.heights(), grid, row, east, north));
    return new GroundSlope(grid, east, north);
  }

  private static void row(double[] z, CellGrid grid, int row, double[] east, double[] north) {
    int columns = grid.columns();
    for (int c = 0; c < columns; c++) {
      int at = row * columns + c;
      if (row == 0 || c == 0 || row == grid.rows() - 1 || c == columns - 1 || z[at] != z[at]) {
        east[at] = Double.NaN;
        north[at] = Double.NaN;
        continue;
      }
      int up = at - columns;
      int down = at + columns;
      double right = z[up + 1] + 2 * z[at + 1] + z[down + 1];
      double left = z[up - 1] + 2 * z[at - 1] + z[down - 1];
      double above = z[up - 1] + 2 * z[up] + z[up + 1];
      double below = z[down - 1] + 2 * z[down] + z[down + 1];
      boolean whole = right + left + above + below == right + left + above + below;
      east[at] = whole ? (right - left) / (8 * grid.cell()) : Double.NaN;
      north[at] = whole ? (above - below) / (8 * grid.cell()) : Double.NaN;
    }
  }

  public CellGrid grid() {
    return grid;
  }

  /** Rise over run, tan beta; NaN where it is not known. */
  public double ratio(int index) {
    return Math.sqrt(east[index] * east[index] + north[index] * north[index]);
  }

  public double percent(int index) {
    return 100 * ratio(index);
  }

  public double degrees(int index) {
    return Math.toDegrees(Math.atan(ratio(index)));
  }

  /** Where the ground falls to, degrees clockwise from grid north; NaN on level ground. */
  public double aspect(int index) {
    if (!(ratio(index) > 0)) {
      return Double.NaN;
    }
    double degrees = Math.toDegrees(Math.atan2(-east[index], -north[index]));
    double turned = degrees < 0 ? degrees + 360 : degrees;
    return turned >= 360 ? 0 : turned;
  }

  /** {@link #percent} of every cell. */
  public Raster percent() {
    double[] values = new double[grid.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = percent(i);
    }
    return new Raster(grid, values);
  }
}
