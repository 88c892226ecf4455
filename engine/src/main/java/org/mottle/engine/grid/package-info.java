/**
 * Floor 0: cells, rasters, and the cells of a green. Row 0 is the northern row; edges, not centres.
 */
package org.mottle.engine.grid;
