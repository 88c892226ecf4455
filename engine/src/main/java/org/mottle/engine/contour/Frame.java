package org.mottle.engine.contour;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Local coordinates: whole metres are taken off, and what is left is a multiple of a power of two,
 * so that going there and back loses nothing as long as coordinates stay below 500,000 km.
 *
 * @param originX whole metres taken off x
 * @param originY whole metres taken off y
 * @param grain lattice of the vertices of level lines, m: about 1 mm, finer for cells below 25 cm
 * @param thinning how far a vertex may lie from the line without it, to be left out, m: a fiftieth
 *     of a cell, for no map is known better
 */
record Frame(double originX, double originY, double grain, double thinning) {
  /** Lattice of every vertex: 2^-23 m, about 0.1 micrometre. */
  static final double UNIT = 0x1p-23;

  private static final double GRAIN = 0x1p-10;

  static Frame of(Envelope extent, double cell) {
    double grain = GRAIN;
    while (grain > cell / 256 && grain > 16 * UNIT) {
      grain /= 2;
    }
    return new Frame(
        Math.rint(extent.centre().x),
        Math.rint(extent.centre().y),
        grain,
        Math.max(grain, cell / 50));
  }

  double localX(double x) {
    return x - originX;
  }

  double localY(double y) {
    return y - originY;
  }

  Coordinate toMap(double x, double y) {
    return new Coordinate(x + originX, y + originY);
  }

  static double round(double value, double step) {
    return Math.rint(value / step) * step;
  }

  static double fine(double value) {
    return round(value, UNIT);
  }
}
