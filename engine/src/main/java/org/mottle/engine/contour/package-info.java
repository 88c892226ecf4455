/**
 * Rasters to bands and lines: valid and gap-free polygons between limits, and the lines between
 * them, by linear interpolation and clipped to an outline.
 */
package org.mottle.engine.contour;
