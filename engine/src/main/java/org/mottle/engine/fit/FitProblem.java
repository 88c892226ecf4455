package org.mottle.engine.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
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
    List<Parameter> linear = new ArrayList<>();
    linear.add(wanted.nugget());
    wanted.structures().forEach(spec -> linear.add(spec.partialSill()));
    return linear.stream().mapToDouble(p -> (lower ? p.lower() : p.upper()) / valueScale).toArray();
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
    double high = Double.isInfinite(parameter.upper()) ? greatest : parameter.upper() / scale;
    double low = parameter.lower() > 0 ? parameter.lower() / scale : Math.min(least, high / 100);
    axes.add(Axis.between(structure, kind, low, Math.max(low, high)));
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
    Arrays.fill(basis[0], 1);
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
    return new NestedModel(within(wanted.nugget(), b[0] * valueScale), structures(place, b));
  }

  /** A value whose scaling to and fro may have moved it by a rounding error over its bound. */
  private static double within(Parameter bounds, double value) {
    return Math.max(bounds.lower(), Math.min(bounds.upper(), value));
  }

  /** The best model that is a nugget alone. */
  double nuggetAlone() {
    double[][] basis = new double[wanted.structures().size() + 1][east.length];
    Arrays.fill(basis[0], 1);
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
              ? unit(spec.shape(), range, kappa)
              : spec.shape()
                  .model(
                      within(spec.partialSill(), b[s + 1] * valueScale),
                      within(spec.range(), inMetres(spec.shape(), range)),
                      kappa);
      structures.add(new Structure(model, new Anisotropy(new Azimuth(azimuth), ratio)));
    }
    return structures;
  }

  /** On scaled lags; unbounded ones so that their coefficient is that of lags in metres. */
  private VariogramModel unit(Shape shape, double range, double kappa) {
    double sill =
        switch (shape) {
          case POWER -> Math.pow(lagScale, range);
          case LINEAR -> range == 0 ? lagScale : 1;
          default -> 1;
        };
    return shape.model(sill, range, kappa);
  }

  /** The range of a structure in metres; an exponent has no unit. */
  private double inMetres(Shape shape, double range) {
    return shape == Shape.POWER ? range : range * lagScale;
  }

  /** What a parameter that lies at its bound is called and is, or null. */
  String atBound(int axis, double place) {
    Axis a = axes.get(axis);
    boolean at = place - a.low() < 1e-9 || a.high() - place < 1e-9;
    if (!at || a.turns() || (a.kind() == Axis.Kind.RATIO && a.value(place) > 1 - 1e-9)) {
      return null;
    }
    double value = a.kind() == Axis.Kind.RANGE ? a.value(place) * lagScale : a.value(place);
    return "the "
        + a.kind().name().toLowerCase(Locale.ROOT)
        + " of the "
        + wanted.structures().get(a.structure()).shape().name().toLowerCase(Locale.ROOT)
        + " structure lies at its bound of "
        + Figures.of(value);
  }
}
