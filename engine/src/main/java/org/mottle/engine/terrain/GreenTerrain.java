package org.mottle.engine.terrain;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.IsoLine;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.progress.Progress;

/**
 * The ground of a green and its surrounds: heights smoothed to their noise ({@link Smoothing}), and
 * what follows from them. Hollows are of the whole model; contours of the green alone. Immutable.
 *
 * @param model smoothed heights, m
 * @param noiseSdM standard deviation of the noise of a height as given, m
 * @param leftSdM the same after smoothing, m
 * @param smoothedM SD of the weights of the smoothing, m; 0 where none was needed
 * @param surrounds how far the heights reach beyond the green
 * @param slope of the smoothed heights
 * @param flood of the smoothed heights
 * @param flow steepest directions
 * @param area contributing area by multiple flow directions
 * @param wetness wetness index
 * @param hollows ground that surface water cannot leave
 * @param contours every 50 mm on the green
 */
public record GreenTerrain(
    ElevationModel model,
    double noiseSdM,
    double leftSdM,
    double smoothedM,
    Surrounds surrounds,
    GroundSlope slope,
    PriorityFlood flood,
    FlowDirection flow,
    ContributingArea area,
    Raster wetness,
    List<Depression> hollows,
    List<IsoLine> contours) {

  /** Noise that may be left in a height after smoothing: a tenth of a contour's step is 5 mm. */
  private static final double LEFT_M = 0.002;

  /** Wider smoothing would take hollows of a putting green with it, m. */
  private static final double WIDEST_M = 1;

  public GreenTerrain {
    hollows = List.copyOf(hollows);
    contours = List.copyOf(contours);
  }

  /**
   * @param heights m; NaN in voids
   * @param outline of the green, m
   */
  public static GreenTerrain of(Raster heights, Geometry outline, Progress progress) {
    ElevationModel given = ElevationModel.of(heights);
    double cell = given.grid().cell();
    double noise = ElevationNoise.sdM(given);
    double sigma = noise > LEFT_M ? Math.min(WIDEST_M, Smoothing.sigmaM(cell, noise, LEFT_M)) : 0;
    ElevationModel model = Smoothing.gaussian(given, sigma);
    // of independent noise a Gaussian leaves cell / (2 √π σ)
    double left =
        sigma > 0 ? Math.min(noise, noise * cell / (2 * Math.sqrt(Math.PI) * sigma)) : noise;
    progress.check();
    PriorityFlood flood = PriorityFlood.of(model, progress);
    GroundSlope slope = GroundSlope.of(model);
    ContributingArea area = ContributingArea.multiple(flood);
    progress.check();
    return new GreenTerrain(
        model,
        noise,
        left,
        sigma,
        Surrounds.of(given, outline),
        slope,
        flood,
        FlowDirection.steepest(flood),
        area,
        WetnessIndex.of(area, slope),
        Depressions.of(flood, left, outline.getFactory()),
        ElevationContours.of(model, outline));
  }

  /** Hollows that reach onto the green. */
  public List<Depression> hollowsOn(Geometry outline) {
    return hollows.stream().filter(h -> h.outline().intersects(outline)).toList();
  }
}
