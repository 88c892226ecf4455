package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;

/**
 * What the readings would have been on a drawn field: the field at the true place, which is the
 * recorded one moved by the drawn common shift and jitter, plus drawn errors of measurement and
 * errors in common. Scratch memory of one thread.
 *
 * <p>The field between the nodes is that of {@link NodeStencil}; what its weighted sums lack is
 * drawn, with the right covariance between readings amid the same four nodes and independent
 * otherwise. Covariances with nodes further away are then off by some thousandths of the sill at
 * most (2e-3 for an exponential range of 16 cells). True places beyond the lattice are taken at its
 * border; it is made large enough to hold them all but for one in some hundred.
 */
final class SimulatedReadings {
  private final Observations observations;
  private final PositionError position;
  private final boolean fixed;
  private final CellGrid lattice;
  private final NodeStencil stencil;
  private final NodeStencil.Place[] place;
  private final double[] u;
  private final double[] v;
  private final int[] node;
  private final double[][] noise;
  private final double[] normal;
  private boolean placed;

  SimulatedReadings(Observations observations, CellGrid lattice, NodeStencil stencil) {
    int n = observations.size();
    this.observations = observations;
    this.position = observations.positionError();
    this.fixed = position.exact();
    this.lattice = lattice;
    this.stencil = stencil;
    this.place = new NodeStencil.Place[n];
    for (int i = 0; i < n; i++) {
      place[i] = new NodeStencil.Place();
    }
    this.u = new double[n];
    this.v = new double[n];
    this.node = new int[n];
    this.noise = new double[n][n];
    this.normal = new double[n];
  }

  /**
   * Draws the readings.
   *
   * @param field [lattice size]
   * @param into [n] overwritten
   */
  void draw(NormalStream normals, double[] field, double[] into) {
    if (!placed) {
      placeAll(normals);
      placed = fixed;
    }
    for (int i = 0; i < into.length; i++) {
      normal[i] = normals.next();
      into[i] = interpolated(field, i) + noise(i);
      into[i] += Math.sqrt(observations.measurementVariance(i)) * normals.next();
    }
    for (CommonError common : observations.commonErrors()) {
      double error = Math.sqrt(common.variance()) * normals.next();
      for (int i = 0; i < into.length; i++) {
        into[i] += common.share(i) * error;
      }
    }
  }

  private void placeAll(NormalStream normals) {
    double east = fixed ? 0 : position.shiftSdM() * normals.next();
    double north = fixed ? 0 : position.shiftSdM() * normals.next();
    for (int i = 0; i < place.length; i++) {
      double sd = position.jitterSdM(i);
      double x = observations.x(i) + east + (fixed ? 0 : sd * normals.next());
      double y = observations.y(i) + north + (fixed ? 0 : sd * normals.next());
      u[i] = within((x - lattice.west()) / lattice.cell() - 0.5, lattice.columns());
      v[i] = within((lattice.north() - y) / lattice.cell() - 0.5, lattice.rows());
      int column = (int) u[i];
      int row = (int) v[i];
      node[i] = lattice.index(row, column);
      stencil.place(u[i] - column, v[i] - row, place[i]);
    }
    factorResiduals();
  }

  /** A place from the second node to just before the last but one. */
  private static double within(double at, int nodes) {
    return Math.max(1, Math.min(at, Math.nextDown(nodes - 2.0)));
  }

  private double interpolated(double[] field, int i) {
    double[] weight = place[i].weight;
    double sum = 0;
    int at = node[i] - lattice.columns() - 1;
    for (int k = 0; k < NodeStencil.NODES; k += NodeStencil.SIDE) {
      for (int j = 0; j < NodeStencil.SIDE; j++) {
        sum += weight[k + j] * field[at + j];
      }
      at += lattice.columns();
    }
    return sum;
  }

  private double noise(int i) {
    double sum = 0;
    for (int j = 0; j <= i; j++) {
      sum += noise[i][j] * normal[j];
    }
    return sum;
  }

  /** Cholesky factor of the covariance of what the weighted sums lack, row by row. */
  private void factorResiduals() {
    for (int i = 0; i < place.length; i++) {
      double[] row = noise[i];
      double left = place[i].residual;
      for (int j = 0; j < i; j++) {
        row[j] = node[i] == node[j] && noise[j][j] > 0 ? entry(i, j) : 0;
        left -= row[j] * row[j];
      }
      row[i] = Math.sqrt(Math.max(0, left));
    }
  }

  private double entry(int i, int j) {
    double dx = (u[i] - u[j]) * lattice.cell();
    double dy = (v[j] - v[i]) * lattice.cell();
    double sum = stencil.residualCovariance(place[i], place[j], dx, dy);
    for (int k = 0; k < j; k++) {
      sum -= noise[i][k] * noise[j][k];
    }
    return sum / noise[j][j];
  }
}
