package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;

/**
 * A plane through the middle of a lattice with a random Gaussian slope, of semivariance hᵀ G h / 2
 * at a separation h.
 *
 * @param xx variance of the slope along x, value² / m²
 * @param xy covariance of the slopes
 * @param yy variance of the slope along y
 */
record RandomPlane(double xx, double xy, double yy) {
  static final RandomPlane FLAT = new RandomPlane(0, 0, 0);

  boolean flat() {
    return xx == 0 && yy == 0;
  }

  RandomPlane plus(RandomPlane other) {
    return new RandomPlane(xx + other.xx, xy + other.xy, yy + other.yy);
  }

  /** Adds one draw of the plane to the field. */
  void add(NormalStream normals, CellGrid lattice, double[] field) {
    double first = normals.next();
    double second = normals.next();
    double east = Math.sqrt(xx) * first;
    double shared = xx > 0 ? xy / Math.sqrt(xx) : 0;
    double north = shared * first + Math.sqrt(Math.max(0, yy - shared * shared)) * second;
    double middleColumn = (lattice.columns() - 1) / 2.0;
    double middleRow = (lattice.rows() - 1) / 2.0;
    for (int row = 0; row < lattice.rows(); row++) {
      double level = north * lattice.cell() * (middleRow - row);
      int start = lattice.index(row, 0);
      for (int column = 0; column < lattice.columns(); column++) {
        field[start + column] += level + east * lattice.cell() * (column - middleColumn);
      }
    }
  }
}
