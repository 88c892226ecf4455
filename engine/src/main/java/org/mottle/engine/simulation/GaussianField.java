package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;

/**
 * A stationary Gaussian random field of mean 0 on the nodes of a lattice. Immutable, shared by
 * threads; each thread draws by a sampler of its own.
 */
public sealed interface GaussianField extends FieldOutcome permits CirculantField, DenseField {

  /** The nodes are the centres of its cells, row 0 in the north. */
  CellGrid lattice();

  /**
   * Largest error of any covariance between nodes, as a share of the sill; for a field of
   * increments of any semivariance. 0 where the field is exact.
   */
  double covarianceError();

  /** How the field is made, in words. */
  String method();

  /** Draws fields; scratch memory of one thread. */
  interface Sampler {
    /**
     * Draws two independent fields.
     *
     * @param one [lattice size] overwritten, row 0 first
     * @param other [lattice size] overwritten
     */
    void drawPair(NormalStream normals, double[] one, double[] other);
  }

  Sampler newSampler();
}
