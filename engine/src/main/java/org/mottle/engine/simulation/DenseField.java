package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;

/**
 * A field from the Cholesky factor of the covariance of every k-th node, and between those by
 * {@link NodeStencil} with independent noise of the variance that interpolation loses. n³/3
 * operations once and n² a field, n the nodes factored. Made by {@link FieldOutcome#of}.
 */
public final class DenseField implements GaussianField {
  private static final double RIDGE = 1e-9;

  private final CellGrid lattice;
  private final CellGrid coarse;
  private final int every;
  private final CholeskyFactor factor;
  private final NodeStencil.Place[] place;
  private final double covarianceError;

  private DenseField(
      CellGrid lattice,
      CellGrid coarse,
      int every,
      CholeskyFactor factor,
      NodeStencil.Place[] place,
      double covarianceError) {
    this.lattice = lattice;
    this.coarse = coarse;
    this.every = every;
    this.factor = factor;
    this.place = place;
    this.covarianceError = covarianceError;
  }

  /** Null if no more than {@code mostNodes} leave an error above the tolerance. */
  static DenseField of(
      StructuralCovariance covariance, CellGrid lattice, int mostNodes, double tolerance) {
    int every = 1;
    while (coarse(lattice, every).size() > mostNodes) {
      every++;
    }
    CellGrid coarse = coarse(lattice, every);
    NodeStencil.Place[] place = places(covariance, coarse.cell(), every);
    double error = RIDGE;
    for (NodeStencil.Place p : place) {
      error = Math.max(error, p.residual / covariance.sill());
    }
    if (!(error <= tolerance)) {
      return null;
    }
    Factorisation outcome = CholeskyFactor.factor(matrix(covariance, coarse));
    return outcome instanceof Factorisation.Factored factored
        ? new DenseField(lattice, coarse, every, factored.factor(), place, error)
        : null;
  }

  /** Every k-th node and a ring round them, its node (1, 1) on node (0, 0) of the lattice. */
  private static CellGrid coarse(CellGrid lattice, int every) {
    if (every == 1) {
      return lattice;
    }
    double cell = lattice.cell() * every;
    return new CellGrid(
        lattice.x(0) - 1.5 * cell,
        lattice.y(0) + 1.5 * cell,
        cell,
        (lattice.columns() - 1) / every + 4,
        (lattice.rows() - 1) / every + 4);
  }

  private static NodeStencil.Place[] places(
      StructuralCovariance covariance, double spacing, int every) {
    NodeStencil.Place[] place = new NodeStencil.Place[every == 1 ? 0 : every * every];
    NodeStencil stencil = place.length == 0 ? null : new NodeStencil(covariance, spacing, false);
    for (int p = 0; p < place.length; p++) {
      place[p] = new NodeStencil.Place();
      stencil.place((double) (p % every) / every, (double) (p / every) / every, place[p]);
    }
    return place;
  }

  private static double[][] matrix(StructuralCovariance covariance, CellGrid nodes) {
    int n = nodes.size();
    double[][] upper = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        int columns = j % nodes.columns() - i % nodes.columns();
        int rows = j / nodes.columns() - i / nodes.columns();
        upper[i][j] = covariance.at(columns * nodes.cell(), -rows * nodes.cell());
      }
      upper[i][i] += RIDGE * covariance.sill();
    }
    return upper;
  }

  @Override
  public CellGrid lattice() {
    return lattice;
  }

  @Override
  public double covarianceError() {
    return covarianceError;
  }

  @Override
  public String method() {
    return "Cholesky factor of " + coarse.size() + " nodes, one in " + every + " along each axis";
  }

  @Override
  public Sampler newSampler() {
    double[] normal = new double[coarse.size()];
    return (normals, one, other) -> {
      draw(normals, normal, one);
      draw(normals, normal, other);
    };
  }

  private void draw(NormalStream normals, double[] normal, double[] into) {
    for (int i = 0; i < normal.length; i++) {
      normal[i] = normals.next();
    }
    double[] nodes = factor.multiplyLower(normal);
    if (every == 1) {
      System.arraycopy(nodes, 0, into, 0, into.length);
      return;
    }
    for (int row = 0; row < lattice.rows(); row++) {
      for (int column = 0; column < lattice.columns(); column++) {
        NodeStencil.Place p = place[row % every * every + column % every];
        int first = coarse.index(row / every, column / every);
        double sum = Math.sqrt(p.residual) * normals.next();
        for (int k = 0; k < NodeStencil.NODES; k++) {
          int at = first + k / NodeStencil.SIDE * coarse.columns() + k % NodeStencil.SIDE;
          sum += p.weight[k] * nodes[at];
        }
        into[lattice.index(row, column)] = sum;
      }
    }
  }
}
