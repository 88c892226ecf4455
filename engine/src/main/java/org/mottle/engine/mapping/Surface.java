package org.mottle.engine.mapping;

import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

/**
 * The moisture over a green.
 *
 * @param cells the cells of the green
 * @param mean estimated local mean at the centres, on {@code cells.surfaceGrid()}, % by volume
 * @param sd standard deviation of its error there, % by volume; NaN where the method has none
 * @param conditionEstimate of the kriging system; 1 for inverse distance
 */
public record Surface(GreenCells cells, Raster mean, Raster sd, double conditionEstimate) {}
