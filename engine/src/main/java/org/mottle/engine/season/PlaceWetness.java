package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Surface;
import org.mottle.engine.patch.Ground;
import org.mottle.engine.survey.WaterHistory;

/**
 * A place of a green in one of its surveys.
 *
 * @param surveyId which
 * @param history the water before it
 * @param wetChance probability of being above the band, mean over the place; NaN without a band
 * @param excessPct mapped moisture of the place minus that of the rest of the green, % by volume;
 *     by the map, which is smoother than the ground. NaN where the place is all of the green
 */
public record PlaceWetness(
    String surveyId, WaterHistory history, double wetChance, double excessPct) {

  /**
   * @param place polygon inside the green
   * @param maps of the green, in any order
   * @return one a map, in their order
   */
  public static List<PlaceWetness> of(Geometry place, List<SurveyedMap> maps) {
    List<PlaceWetness> found = new ArrayList<>();
    for (SurveyedMap m : maps) {
      Surface s = m.map().surface();
      double chance =
          s.chances().map(c -> mean(place, EdgeFill.of(c.wet(), s.cells()))).orElse(Double.NaN);
      Geometry green = m.map().subject().green().outline();
      double own = mean(place, s.interpolable());
      double whole = mean(green, s.interpolable());
      double share = place.getArea() / green.getArea();
      // of the whole and its part follows the rest
      double excess = share < 1 ? (own - whole) / (1 - share) : Double.NaN;
      found.add(
          new PlaceWetness(m.surveyId(), m.history(), Math.max(0, Math.min(1, chance)), excess));
    }
    return found;
  }

  private static double mean(Geometry ground, Raster raster) {
    return Ground.of(ground, raster).mean(new LinearSurface(raster));
  }
}
