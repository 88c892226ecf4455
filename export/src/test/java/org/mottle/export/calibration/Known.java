package org.mottle.export.calibration;

import org.mottle.engine.variogram.NestedModel;

/**
 * What a generator knows of its fields and a survey does not; the standard errors of positions a
 * survey records too.
 *
 * @param pool greens of one name share range and shape
 * @param structure variogram of the local mean, without nugget
 * @param nugget variance of one insertion about the local mean, %²
 * @param jitterSd of each recorded position, per axis, m
 * @param shiftSd of the error all positions of the visit share, per axis, m
 */
record Known(String pool, NestedModel structure, double nugget, double jitterSd, double shiftSd) {

  /** The practical range of the field, m. */
  double rangeM() {
    return structure.structures().get(0).model().practicalRange();
  }
}
