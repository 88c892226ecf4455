/**
 * A delivered map for a drawing office and for laying over imagery: DXF, points to set out,
 * coloured overlays, KMZ.
 */
package org.mottle.export.drawings;
