package org.mottle.engine.simulation;

import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/**
 * One structure made ready for intrinsic embedding (Stein 2002; Gneiting, Ševčíková, Percival,
 * Schlather & Jiang 2006): up to the longest lag L of the lattice, u = h/L <= 1, the function on
 * the torus is C(h) + a0 + a2 u², beyond it b (r - u)³/u up to u = r, the two joined with equal
 * value, slope and curvature; or nothing beyond it for r = 1, joined with equal value and slope.
 * Its variogram falls short of the structure's by a2 u², which is that of a random plane.
 */
final class IntrinsicTerm {
  /** Step of the differences that stand for the derivatives at L, in L. */
  private static final double STEP = 1e-3;

  private final Structure structure;
  private final double longest;
  private final double end;
  private final double constant;
  private final double square;
  private final double tail;

  /**
   * @param end r, at least 1
   * @param spanX longest separation along x, m
   * @param spanY longest separation along y, m
   */
  IntrinsicTerm(Structure structure, double end, double spanX, double spanY) {
    this.structure = structure;
    this.end = end;
    Anisotropy a = structure.anisotropy();
    this.longest = Math.sqrt(Math.max(a.squaredLag(spanX, spanY), a.squaredLag(spanX, -spanY)));
    VariogramModel model = structure.model();
    double here = model.semivariance(longest);
    double before = model.semivariance(longest * (1 - STEP));
    double after = model.semivariance(longest * (1 + STEP));
    double slope = -(after - before) / (2 * STEP);
    double curvature = -(after - 2 * here + before) / (STEP * STEP);
    double e = end - 1;
    double tailSlope = -e * e * (end + 2);
    double tailCurvature = 2 * e * e * e + 6 * e * e + 6 * e;
    this.tail = e == 0 ? 0 : (curvature - slope) / (tailCurvature - tailSlope);
    this.square = (tail * tailSlope - slope) / 2;
    this.constant = tail * e * e * e - (model.partialSill() - here) - square;
  }

  /** Whether what is left to the plane is a variance. */
  boolean feasible() {
    return square >= -1e-12 * structure.model().partialSill();
  }

  /** Where the function ends along x or y, m. */
  double reach(boolean alongX) {
    return end * longest * StructuralCovariance.extent(structure.anisotropy(), alongX);
  }

  RandomPlane plane() {
    Anisotropy a = structure.anisotropy();
    double along = 2 * Math.max(0, square) / (longest * longest);
    double across = along / (a.ratio() * a.ratio());
    double sin = Math.sin(a.major().radians());
    double cos = Math.cos(a.major().radians());
    return new RandomPlane(
        along * sin * sin + across * cos * cos,
        (along - across) * sin * cos,
        along * cos * cos + across * sin * sin);
  }

  /** Value of the function on the torus at a separation, value². */
  double at(double dx, double dy) {
    double lag = Math.sqrt(structure.anisotropy().squaredLag(dx, dy));
    double u = lag / longest;
    if (u <= 1) {
      VariogramModel model = structure.model();
      return model.partialSill() - model.semivariance(lag) + constant + square * u * u;
    }
    double left = Math.max(0, end - u);
    return tail * left * left * left / u;
  }
}
