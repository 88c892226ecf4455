package org.mottle.export.drawings;

import org.locationtech.jts.geom.Geometry;

/**
 * Something to draw.
 *
 * @param layer of the drawing
 * @param surveyId survey it comes from; empty where it belongs to the site
 * @param geometry in the working CRS, m
 * @param z height, m; NaN where not known
 * @param label in the drawing
 * @param description for the list of points
 */
record Shape(
    CadLayer layer,
    String surveyId,
    Geometry geometry,
    double z,
    String label,
    String description) {}
