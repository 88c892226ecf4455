package org.mottle.engine.terrain;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.IsoLine;
import org.mottle.engine.contour.IsoLines;

/** Contour lines of the ground inside an area, at whole multiples of a step of height. */
public final class ElevationContours {
  /** Step of a green's contours, m. */
  public static final double STEP_M = 0.05;

  private ElevationContours() {}

  /** Every 50 mm. */
  public static List<IsoLine> of(ElevationModel model, Geometry area) {
    return of(model, area, STEP_M);
  }

  /**
   * @param model smoothed heights: lines of a noisy model are frayed
   * @param area valid polygon or multipolygon, m
   * @param stepM step of height, above 0, m
   */
  public static List<IsoLine> of(ElevationModel model, Geometry area, double stepM) {
    return IsoLines.of(area, model.raster(), stepM);
  }
}
