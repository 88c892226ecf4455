package org.mottle.engine.simulation;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.survey.Refusal;

/**
 * Looks for the cheapest way to a field, in this order; the first whose covariances are within
 * {@link #TOLERANCE} of the sill is taken.
 *
 * <ol>
 *   <li>circulant embedding on the smallest torus that can be exact: the lattice plus the reach of
 *       the covariance, or twice the lattice;
 *   <li>intrinsic embedding, where increments are enough;
 *   <li>a Cholesky factor on every k-th node, where the field is so smooth that interpolation loses
 *       nothing;
 *   <li>larger tori, up to twice the reach of the covariance;
 *   <li>a larger Cholesky factor.
 * </ol>
 */
final class FieldSearch {
  /** Largest error of a covariance that is taken, as a share of the sill. */
  static final double TOLERANCE = 1e-3;

  /** A covariance down to this share of the sill is as good as none. */
  private static final double NEGLIGIBLE = 1e-4;

  private static final double GROWTH = 1.5;
  private static final long MOST_NODES = 1L << 21;
  private static final int FEW_DENSE = 700;
  private static final int MOST_DENSE = 2000;

  private final StructuralCovariance covariance;
  private final CellGrid lattice;
  private final boolean incrementsOnly;

  FieldSearch(StructuralCovariance covariance, CellGrid lattice, boolean incrementsOnly) {
    this.covariance = covariance;
    this.lattice = lattice;
    this.incrementsOnly = incrementsOnly;
  }

  FieldOutcome find() {
    double reachX = covariance.reachX(NEGLIGIBLE) / lattice.cell();
    double reachY = covariance.reachY(NEGLIGIBLE) / lattice.cell();
    double marginX = Math.min(reachX, lattice.columns() - 1);
    double marginY = Math.min(reachY, lattice.rows() - 1);
    GaussianField found = folded(marginX, marginY);
    if (found == null && incrementsOnly) {
      found = intrinsic(1);
      found = found == null ? intrinsic(1.2) : found;
    }
    if (found == null) {
      found = DenseField.of(covariance, lattice, FEW_DENSE, TOLERANCE);
    }
    // on a torus of twice the reach no covariance meets its own image
    double enoughX = Math.max(reachX, 2 * reachX - lattice.columns());
    double enoughY = Math.max(reachY, 2 * reachY - lattice.rows());
    while (found == null && (marginX < enoughX || marginY < enoughY)) {
      marginX = Math.min(enoughX, GROWTH * (marginX + 1));
      marginY = Math.min(enoughY, GROWTH * (marginY + 1));
      if (nodes(marginX, marginY) > MOST_NODES) {
        break;
      }
      found = folded(marginX, marginY);
    }
    if (found == null) {
      found = DenseField.of(covariance, lattice, MOST_DENSE, TOLERANCE);
    }
    return found == null ? refused() : found;
  }

  private FieldOutcome refused() {
    return new FieldOutcome.Refused(
        new Refusal(
            String.format(
                Locale.ROOT,
                "no field with the covariance %s on %d x %d cells of %s m has errors below %s of the"
                    + " sill within %d nodes",
                covariance.model(),
                lattice.columns(),
                lattice.rows(),
                lattice.cell(),
                TOLERANCE,
                MOST_NODES),
            "use a larger cell, or a model with a shorter range"));
  }

  private static int side(int nodes, double margin) {
    return RowTransform.cheapestAtLeast((int) Math.min(1 << 28, nodes + Math.ceil(margin)));
  }

  private long nodes(double marginX, double marginY) {
    return (long) side(lattice.columns(), marginX) * side(lattice.rows(), marginY);
  }

  /** Torus on which the covariance is that of the shorter way round. */
  private GaussianField folded(double marginX, double marginY) {
    if (nodes(marginX, marginY) > MOST_NODES) {
      return null;
    }
    int nx = side(lattice.columns(), marginX);
    int ny = side(lattice.rows(), marginY);
    double[] dy = northings(ny);
    double[] squaredLag = new double[ny];
    Torus torus =
        new Torus(
            lattice.columns(),
            lattice.rows(),
            nx,
            ny,
            covariance.isotropic(),
            (i, into) -> covariance.row(separation(i, nx), dy, ny, squaredLag, into));
    double wrapped = Math.max(wrapped(nx, true), wrapped(ny, false));
    return accepted(torus, RandomPlane.FLAT, wrapped);
  }

  /** Error from a torus shorter than twice the lattice. */
  private double wrapped(int nodes, boolean alongX) {
    int cells = alongX ? lattice.columns() : lattice.rows();
    if (nodes >= 2 * cells - 1) {
      return 0;
    }
    double lag = (nodes - cells + 1) * lattice.cell();
    return covariance.most(lag, alongX);
  }

  private GaussianField intrinsic(double end) {
    double spanX = (lattice.columns() - 1) * lattice.cell();
    double spanY = (lattice.rows() - 1) * lattice.cell();
    List<IntrinsicTerm> terms =
        covariance.model().structures().stream()
            .map(s -> new IntrinsicTerm(s, end, spanX, spanY))
            .toList();
    double reachX = terms.stream().mapToDouble(t -> t.reach(true)).max().orElse(0);
    double reachY = terms.stream().mapToDouble(t -> t.reach(false)).max().orElse(0);
    int nx = side(lattice.columns(), reachX / lattice.cell());
    int ny = side(lattice.rows(), reachY / lattice.cell());
    if (!terms.stream().allMatch(IntrinsicTerm::feasible) || (long) nx * ny > MOST_NODES) {
      return null;
    }
    double[] dy = northings(ny);
    Torus torus =
        new Torus(
            lattice.columns(),
            lattice.rows(),
            nx,
            ny,
            covariance.isotropic(),
            (i, into) -> sum(terms, separation(i, nx), dy, into));
    RandomPlane plane =
        terms.stream().map(IntrinsicTerm::plane).reduce(RandomPlane.FLAT, RandomPlane::plus);
    return accepted(torus, plane, 0);
  }

  private void sum(List<IntrinsicTerm> terms, double dx, double[] dy, double[] into) {
    int half = covariance.isotropic() ? dy.length / 2 : dy.length - 1;
    for (int j = 0; j <= half; j++) {
      double sum = 0;
      for (IntrinsicTerm term : terms) {
        sum += term.at(dx, dy[j]);
      }
      into[j] = sum;
    }
    for (int j = half + 1; j < dy.length; j++) {
      into[j] = into[dy.length - j];
    }
  }

  private GaussianField accepted(Torus torus, RandomPlane plane, double wrapped) {
    double sill = covariance.sill();
    double error = sill == 0 ? 0 : (torus.clamped() + wrapped) / sill;
    return error <= TOLERANCE ? new CirculantField(lattice, torus, plane, error) : null;
  }

  /** North of the first node, m: rows go south. */
  private double[] northings(int nodes) {
    double[] north = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      north[i] = -separation(i, nodes);
    }
    return north;
  }

  private double separation(int i, int nodes) {
    return (2 * i <= nodes ? i : i - nodes) * lattice.cell();
  }
}
