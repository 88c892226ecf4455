package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.variogram.NestedModel;

/** A Gaussian field on a lattice, or why there is none. */
public sealed interface FieldOutcome permits GaussianField, FieldOutcome.Refused {

  /** No way to a field of this covariance on this lattice. */
  record Refused(Refusal refusal) implements FieldOutcome {}

  /**
   * A field with the structures of a model; its nugget is left out.
   *
   * @param model bounded
   * @param lattice its nodes are the centres of the cells
   * @param incrementsOnly whether it is enough that differences have the variogram of the model, as
   *     where the mean is unknown: it opens the way to ranges longer than the lattice
   */
  static FieldOutcome of(NestedModel model, CellGrid lattice, boolean incrementsOnly) {
    return new FieldSearch(new StructuralCovariance(model), lattice, incrementsOnly).find();
  }
}
