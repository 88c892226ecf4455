package org.mottle.export.calibration;

import org.locationtech.jts.geom.Geometry;

/**
 * A patch that a method drew.
 *
 * @param wet or dry
 * @param outline m
 * @param existence probability that at least 1 m² of it is there
 */
record PatchClaim(boolean wet, Geometry outline, double existence) {}
