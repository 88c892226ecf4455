package org.mottle.engine.fit;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/**
 * The sum of squares as a function of the non-linear parameters alone: at each of their places the
 * nugget and the partial sills are at their best. Lags are scaled by the longest, semivariances by
 * the greatest. Counts its evaluations; one thread.
 */
final class FitProblem {
  private final WeightedLeastSquares wanted;
  private final double lagScale;
  private final double valueScale;
  private final double[] east;
  private final double[] north;
  private final List<Axis> axes;
  private final SillFit sills;
  private int evaluations;

  FitProblem(WeightedLeastSquares wanted, ExperimentalVariogram variogram) {
    this.wanted = wanted;
    List<Lag> lags = variogram.lags();
    int n = lags.size();
    lagScale = variogram.longestLag();
    valueScale = lags.stream().mapToDouble(Lag::semivariance).max().orElse(1);
    east = new double[n];
    north = new double[n];
    double[] g = new double[n];
    double[] rootWeight = new double[n];
    double shortest = 1;
    for (int j = 0; j < n; j++) {
      Lag lag = lags.get(j);
      double h = lag.distance() / lagScale;
      double bearing = lag.direction().azimuth().radians();
      east[j] = h * Math.sin(bearing);
      north[j] = h * Math.cos(bearing);
      g[j] = lag.semivariance() / valueScale;
      rootWeight[j] = rootWeight(wanted.weighting(), lag.pairs(), h);
      shortest = Math.min(shortest, h);
    }
    axes = axes(wanted.structures(), shortest);
    sills =
        new SillFit(
            g, rootWeight, wanted.weighting() == Weighting.CRESSIE, bounds(true), bounds(false));
  }

  private static double rootWeight(Weighting weighting, long pairs, double h) {
    return switch (weighting) {
      case PAIRS_OVER_LAG_SQUARED -> Math.sqrt(pairs) / h;
      case PAIRS, CRESSIE -> Math.sqrt(pairs);
      case EQUAL -> 1;
    };
  }

  private double[] bounds(boolean lower) {
    List<StructureSpec> structures = wanted.structures();
    double[] bounds = new double[structures.size() + 1];
    Parameter nugget = wanted.nugget();
    bounds[0] = (lower ? nugget.lower() : nugget.upper()) / valueScale;
    for (int s = 0; s < structures.size(); s++) {
      StructureSpec spec = structures.get(s);
      Parameter sill = spec.partialSill();
      double factor = coefficientScale(spec.shape(), spec.range());
      bounds[s + 1] = (lower ? sill.lower() : sill.upper()) / factor;
    }
    return bounds;
  }

  /** What a coefficient of a scaled structure is to be multiplied with; exponents fixed only. */
  private double coefficientScale(Shape shape, Parameter range) {
    double exponent = 0;
    if (shape == Shape.LINEAR && range.isFixed() && range.lower() == 0) {
      exponent = 1;
    } else if (shape == Shape.POWER) {
      exponent = range.lower();
    }
    return valueScale / Math.pow(lagScale, exponent);
  }

  private List<Axis> axes(List<StructureSpec> structures, double shortest) {
    List<Axis> found = new ArrayList<>();
    for (int s = 0; s < structures.size(); s++) {
      StructureSpec spec = structures.get(s);
      if (spec.shape() == Shape.POWER) {
        add(found, s, Axis.Kind.EXPONENT, spec.range(), 0.02, 1.98, 1);
      } else {
        add(found, s, Axis.Kind.RANGE, spec.range(), 0.1 * shortest, 100, lagScale);
      }
      add(found, s, Axis.Kind.KAPPA, spec.kappa(), 0.2, 5, 1);
      add(found, s, Axis.Kind.AZIMUTH, spec.azimuth(), 0, 180, 1);
      add(found, s, Axis.Kind.RATIO, spec.ratio(), 0.05, 1, 1);
    }
    return found;
  }

  private static void add(
      List<Axis> axes,
      int structure,
      Axis.Kind kind,
      Parameter parameter,
      double least,
      double greatest,
      double scale) {
    if (parameter.isFixed()) {
      return;
    }
    double high = Math.min(parameter.upper() / scale, greatest(kind, greatest));
    double low = parameter.lower() > 0 ? parameter.lower() / scale : Math.min(least, high / 100);
    if (!Double.isInfinite(parameter.upper())) {
      high = parameter.upper() / scale;
    }
    axes.add(Axis.between(structure, kind, low, Math.max(low, high)));
  }

  private static double greatest(Axis.Kind kind, double greatest) {
    return greatest;
  }

  List<Axis> axes() {
    return axes;
  }

  int evaluations() {
    return evaluations;
  }

  /** Sum of squares (scaled) at a place. */
  double sum(double[] place) {
    double sum = 0;
    for (double r : residuals(place)) {
      sum += r * r;
    }
    return sum < Double.POSITIVE_INFINITY ? sum : Double.MAX_VALUE;
  }

  /** Weighted residuals (scaled) at a place, [lags]. */
  double[] residuals(double[] place) {
    evaluations++;
    double[][] basis = basis(place);
    return sills.residuals(basis, sills.coefficients(basis));
  }

  /** Basis functions at the lags, [1 + structures][lags]; the first is the nugget's. */
  private double[][] basis(double[] place) {
    List<Structure> unit = structures(place, null);
    double[][] basis = new double[unit.size() + 1][east.length];
    java.util.Arrays.fill(basis[0], 1);
    for (int s = 0; s < unit.size(); s++) {
      for (int j = 0; j < east.length; j++) {
        basis[s + 1][j] = unit.get(s).semivariance(east[j], north[j]);
      }
    }
    return basis;
  }

  /** The model at a place in the units of the variogram. */
  NestedModel model(double[] place) {
    double[] b = sills.coefficients(basis(place));
    return new NestedModel(b[0] * valueScale, structures(place, b));
  }

  /** The best model that is a nugget alone. */
  double nuggetAlone() {
    double[][] basis = new double[wanted.structures().size() + 1][east.length];
    java.util.Arrays.fill(basis[0], 1);
    return sills.coefficients(basis)[0] * valueScale;
  }

  /** Structures of sill 1 on scaled lags, or with coefficients b in the units of the variogram. */
  private List<Structure> structures(double[] place, double[] b) {
    List<Structure> structures = new ArrayList<>();
    for (int s = 0; s < wanted.structures().size(); s++) {
      StructureSpec spec = wanted.structures().get(s);
      double range =
          spec.shape() == Shape.POWER ? spec.range().lower() : spec.range().lower() / lagScale;
      double kappa = spec.kappa().lower();
      double azimuth = spec.azimuth().lower();
      double ratio = spec.ratio().lower();
      for (int a = 0; a < axes.size(); a++) {
        Axis axis = axes.get(a);
        if (axis.structure() == s) {
          double value = axis.value(place[a]);
          switch (axis.kind()) {
            case RANGE, EXPONENT -> range = value;
            case KAPPA -> kappa = value;
            case AZIMUTH -> azimuth = value;
            case RATIO -> ratio = Math.min(1, value);
          }
        }
      }
      VariogramModel model =
          b == null
              ? spec.shape().model(1, range, kappa)
              : inUnits(spec.shape(), b[s + 1], range, kappa);
      structures.add(new Structure(model, new Anisotropy(new Azimuth(azimuth), ratio)));
    }
    return structures;
  }

  private VariogramModel inUnits(Shape shape, double b, double range, double kappa) {
    if (shape == Shape.POWER) {
      return shape.model(b * valueScale / Math.pow(lagScale, range), range, kappa);
    }
    if (shape == Shape.LINEAR && range == 0) {
      return shape.model(b * valueScale / lagScale, 0, kappa);
    }
    return shape.model(b * valueScale, range * lagScale, kappa);
  }
}
