package org.mottle.export.write;

import org.mottle.engine.grid.Raster;

/**
 * A raster and what it shows.
 *
 * @param greenId green, as the site numbers it
 * @param surveyId survey, as the site names it; may be empty
 * @param kind what the cells hold
 * @param raster NaN outside the green
 */
public record NamedRaster(String greenId, String surveyId, RasterKind kind, Raster raster) {}
