package org.mottle.export.read;

import java.util.List;
import org.mottle.engine.grid.Raster;

/**
 * Heights of a green and the ground round it.
 *
 * @param raster heights in metres at the cells' centres, in the working CRS; NaN in voids
 * @param sources names of the files it comes from, the one that covers most first
 * @param vertical the vertical datum as recorded, or "not recorded"
 * @param voidShare share of the raster's cells without a height
 * @param greenVoidShare share of the cells with their centre in the outline without a height
 * @param notes what was detected or decided, one line each, to be told to the user
 */
public record Elevation(
    Raster raster,
    List<String> sources,
    String vertical,
    double voidShare,
    double greenVoidShare,
    List<String> notes) {
  public static final String NOT_RECORDED = "not recorded";

  public Elevation {
    sources = List.copyOf(sources);
    notes = List.copyOf(notes);
  }
}
