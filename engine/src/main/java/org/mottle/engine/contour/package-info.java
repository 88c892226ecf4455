/**
 * Rasters to tiles and lines: valid and gap-free polygons by the limits of one surface or several,
 * and the lines between them, by linear interpolation and clipped to an outline.
 */
package org.mottle.engine.contour;
