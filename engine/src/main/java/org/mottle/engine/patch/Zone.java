package org.mottle.engine.patch;

import org.locationtech.jts.geom.Geometry;

/**
 * All ground of a green in one class of its target band.
 *
 * @param cls dry, in band or wet
 * @param geometry polygon or multipolygon, m
 * @param areaM2 m²
 * @param mean moisture, % by volume, weighted by covered area
 * @param sd standard error of the mean, % by volume; NaN when not known
 */
public record Zone(ZoneClass cls, Geometry geometry, double areaM2, double mean, double sd) {}
