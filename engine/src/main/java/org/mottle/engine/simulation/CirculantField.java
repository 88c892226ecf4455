package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;

/**
 * A field by circulant embedding, and a random plane where the torus holds what is left of the
 * variogram once a plane is taken out of it. Made by {@link FieldOutcome#of}.
 */
public final class CirculantField implements GaussianField {
  private final CellGrid lattice;
  private final Torus torus;
  private final RandomPlane plane;
  private final double covarianceError;

  CirculantField(CellGrid lattice, Torus torus, RandomPlane plane, double covarianceError) {
    this.lattice = lattice;
    this.torus = torus;
    this.plane = plane;
    this.covarianceError = covarianceError;
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
    return (plane.flat() ? "circulant" : "intrinsic circulant")
        + " embedding on "
        + torus.nodesX()
        + " x "
        + torus.nodesY()
        + " nodes";
  }

  /** Nodes of the torus. */
  int nodes() {
    return torus.nodes();
  }

  @Override
  public Sampler newSampler() {
    Torus.Scratch scratch = new Torus.Scratch(torus);
    return (normals, one, other) -> {
      torus.drawPair(normals, scratch, one, other);
      if (!plane.flat()) {
        plane.add(normals, lattice, one);
        plane.add(normals, lattice, other);
      }
    };
  }
}
