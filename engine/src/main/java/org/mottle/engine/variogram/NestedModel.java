package org.mottle.engine.variogram;

import java.util.List;
import org.mottle.engine.check.Check;

/**
 * A whole variogram: nugget plus structures, gamma(h) = c0 [h > 0] + sum of structures. The nugget
 * is micro-scale variance of the soil; variance of the measurement belongs to the observations, not
 * here. Immutable.
 *
 * @param nugget c0, value²
 * @param structures any number, each with its own anisotropy
 */
public record NestedModel(double nugget, List<Structure> structures) {

  public NestedModel {
    Check.atLeast("nugget", nugget, 0, "value²");
    structures = List.copyOf(structures);
  }

  public static NestedModel of(double nugget, VariogramModel... models) {
    return new NestedModel(
        nugget, java.util.Arrays.stream(models).map(Structure::isotropic).toList());
  }

  /** Semivariance of a separation, value²; exactly 0 at none. */
  public double semivariance(double dx, double dy) {
    if (dx == 0 && dy == 0) {
      return 0;
    }
    double sum = nugget;
    for (Structure s : structures) {
      sum += s.semivariance(dx, dy);
    }
    return sum;
  }

  /** Whether every structure levels off, so that a covariance exists. */
  public boolean bounded() {
    return structures.stream().allMatch(s -> s.model().bounded());
  }

  /** Nugget plus partial sills, value²; infinite when a structure is unbounded. */
  public double sill() {
    return bounded()
        ? nugget + structures.stream().mapToDouble(s -> s.model().partialSill()).sum()
        : Double.POSITIVE_INFINITY;
  }

  /** Share of the sill that is nugget, 0 to 1; 0 for an unbounded model, 1 without structures. */
  public double nuggetShare() {
    return bounded() ? (sill() == 0 ? 1 : nugget / sill()) : 0;
  }

  public NestedModel withNugget(double newNugget) {
    return new NestedModel(newNugget, structures);
  }
}
