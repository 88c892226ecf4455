package org.mottle.engine.survey;

import java.util.List;

/**
 * What is known of the errors that readings of a visit have in common.
 *
 * @param shared errors of the values; shares in the order of the visit's readings
 * @param shiftSdM standard error per axis of the shift common to the visit, m; NaN: what is usual
 *     for the source of the positions
 */
public record VisitErrors(List<SharedError> shared, double shiftSdM) {
  /** Nothing beyond what readings and settings say. */
  public static final VisitErrors UNKNOWN = new VisitErrors(List.of(), Double.NaN);

  public VisitErrors {
    shared = List.copyOf(shared);
  }
}
