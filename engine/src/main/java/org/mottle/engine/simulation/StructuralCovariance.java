package org.mottle.engine.simulation;

import java.util.Arrays;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/**
 * Covariance of the structures of a bounded model, the nugget left out: C(h) = sum of c - gamma(h).
 * Immutable.
 */
final class StructuralCovariance {
  private final NestedModel model;
  private final double sill;

  StructuralCovariance(NestedModel model) {
    if (!model.bounded()) {
      throw new IllegalArgumentException(
          "a field needs a variogram that levels off, was " + model + "; use a bounded model");
    }
    this.model = model;
    this.sill = model.sill() - model.nugget();
  }

  /** C(0), value². */
  double sill() {
    return sill;
  }

  NestedModel model() {
    return model;
  }

  boolean isotropic() {
    return model.structures().stream().allMatch(s -> s.anisotropy().isotropic());
  }

  /**
   * Covariances of the separations (dx, dy[i]).
   *
   * @param squaredLag [count] scratch
   * @param into [count] overwritten, value²
   */
  void row(double dx, double[] dy, int count, double[] squaredLag, double[] into) {
    Arrays.fill(into, 0, count, 0);
    for (Structure s : model.structures()) {
      squaredLags(s.anisotropy(), dx, dy, count, squaredLag);
      s.model().addSemivariances(squaredLag, count, into);
    }
    for (int i = 0; i < count; i++) {
      into[i] = sill - into[i];
    }
  }

  private static void squaredLags(
      Anisotropy anisotropy, double dx, double[] dy, int count, double[] squaredLag) {
    if (anisotropy.isotropic()) {
      for (int i = 0; i < count; i++) {
        squaredLag[i] = dx * dx + dy[i] * dy[i];
      }
      return;
    }
    for (int i = 0; i < count; i++) {
      squaredLag[i] = anisotropy.squaredLag(dx, dy[i]);
    }
  }

  /** Covariance of one separation, value². */
  double at(double dx, double dy) {
    double sum = 0;
    for (Structure s : model.structures()) {
      sum += s.semivariance(dx, dy);
    }
    return sill - sum;
  }

  /** Separation along x beyond which no more than {@code share} of the sill is left, m. */
  double reachX(double share) {
    return reach(share, true);
  }

  /** Separation along y beyond which no more than {@code share} of the sill is left, m. */
  double reachY(double share) {
    return reach(share, false);
  }

  /** Largest covariance of any separation of at least {@code lag} along x or y, value². */
  double most(double lag, boolean alongX) {
    double sum = 0;
    for (Structure s : model.structures()) {
      double scaled = lag / extent(s.anisotropy(), alongX);
      sum += s.model().partialSill() - s.model().semivariance(scaled);
    }
    return sum;
  }

  private double reach(double share, boolean alongX) {
    double most = 0;
    for (Structure s : model.structures()) {
      double c = s.model().partialSill();
      if (c > 0) {
        // each structure may keep its part of the share
        most = Math.max(most, reach(s.model(), share) * extent(s.anisotropy(), alongX));
      }
    }
    return most;
  }

  /** Half the width of the ellipse with major axis 1 along x or y. */
  static double extent(Anisotropy anisotropy, boolean alongX) {
    double sin = Math.sin(anisotropy.major().radians());
    double cos = Math.cos(anisotropy.major().radians());
    double along = alongX ? sin : cos;
    double across = (alongX ? cos : sin) * anisotropy.ratio();
    return Math.sqrt(along * along + across * across);
  }

  private static double reach(VariogramModel model, double share) {
    double least = share * model.partialSill();
    double low = 0;
    double high = model.practicalRange();
    while (model.partialSill() - model.semivariance(high) > least) {
      low = high;
      high *= 1.5;
    }
    while (high - low > 1e-3 * high) {
      double middle = (low + high) / 2;
      if (model.partialSill() - model.semivariance(middle) > least) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
