package org.mottle.engine.contour;

import org.locationtech.jts.geom.MultiLineString;

/**
 * The line along which a surface has one value.
 *
 * @param level the value
 * @param geometry its parts inside the outline, m
 */
public record IsoLine(double level, MultiLineString geometry) {}
