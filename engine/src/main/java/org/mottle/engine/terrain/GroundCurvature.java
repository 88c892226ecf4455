package org.mottle.engine.terrain;

import org.mottle.engine.grid.CellGrid;

/**
 * Profile and plan curvature of one cell, 1/m, by the quadratic terms of Zevenbergen & Thorne
 * (1987, Earth Surface Processes and Landforms 12): with x to the east, y to the north and cell
 * side L,
 *
 * <pre>
 *   D = ((zW + zE)/2 - z)/L²      F = (zNE + zSW - zNW - zSE)/4L²     G = (zE - zW)/2L
 *   E = ((zN + zS)/2 - z)/L²                                          H = (zN - zS)/2L
 *   profile =  2 (D G² + E H² + F G H) / (G² + H²)      second derivative along the fall
 *   plan    =  2 (D H² + E G² - F G H) / (G² + H²)      second derivative across the fall
 * </pre>
 *
 * Both signs are those of the height: <b>positive is hollow</b>. A hollow profile slows water, a
 * hollow plan gathers it. (The paper gives the profile the opposite sign; other programs differ
 * again.) Where the ground is level there is no fall, and both are the mean D + E.
 *
 * @param profile along the fall, 1/m, positive where hollow
 * @param plan across the fall, 1/m, positive where hollow
 */
public record GroundCurvature(double profile, double plan) {

  private static final GroundCurvature UNKNOWN = new GroundCurvature(Double.NaN, Double.NaN);

  /** NaN for both where one of the eight neighbours has no height. */
  public static GroundCurvature at(ElevationModel model, int index) {
    CellGrid grid = model.grid();
    int columns = grid.columns();
    int row = index / columns;
    int column = index % columns;
    if (row == 0 || column == 0 || row == grid.rows() - 1 || column == columns - 1) {
      return UNKNOWN;
    }
    double[] z = model.heights();
    int up = index - columns;
    int down = index + columns;
    double square = grid.cell() * grid.cell();
    double d = ((z[index - 1] + z[index + 1]) / 2 - z[index]) / square;
    double e = ((z[up] + z[down]) / 2 - z[index]) / square;
    double f = (z[up + 1] + z[down - 1] - z[up - 1] - z[down + 1]) / (4 * square);
    double g = (z[index + 1] - z[index - 1]) / (2 * grid.cell());
    double h = (z[up] - z[down]) / (2 * grid.cell());
    double fall = g * g + h * h;
    if (Double.isNaN(d + e + f)) {
      return UNKNOWN;
    }
    return fall == 0
        ? new GroundCurvature(d + e, d + e)
        : new GroundCurvature(
            2 * (d * g * g + e * h * h + f * g * h) / fall,
            2 * (d * h * h + e * g * g - f * g * h) / fall);
  }

  /** Sum of both, the Laplacian of the height, 1/m: positive where hollow. */
  public double sum() {
    return profile + plan;
  }
}
