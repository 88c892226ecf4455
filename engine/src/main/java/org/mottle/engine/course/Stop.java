package org.mottle.engine.course;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.water.WaterWanted;

/**
 * A place of a hand-watering walk.
 *
 * @param order from 1, over the whole course
 * @param place where
 * @param what of what kind
 * @param existence probability that such a place is there
 * @param areaM2 of the patch; NaN where the size is not known
 * @param water wanted; empty where it is not worked out
 * @param minutes of the hose for one pass; NaN without a measured flow
 * @param cautions to mind there
 */
public record Stop(
    int order,
    Place place,
    Kind what,
    double existence,
    double areaM2,
    Optional<WaterWanted> water,
    double minutes,
    List<Caution> cautions) {

  /** Kinds of places. */
  public enum Kind {
    /** Outlined: water by the figures, once looked at. */
    PATCH,
    /** Seen at a station, size not known: look, read round it. */
    SPOT,
    /** A station of a second, drier population. */
    REPELLENT
  }

  /**
   * @param greenId the green
   * @param surveyId the survey
   * @param patch number of the patch; 0 where it is none
   * @param station nearest station of a spot; empty where it is a patch, or not named
   * @param x a point on it, m
   * @param y m
   */
  public record Place(
      String greenId, String surveyId, int patch, String station, double x, double y) {}

  public Stop {
    cautions = List.copyOf(cautions);
  }

  Stop at(int newOrder) {
    return new Stop(newOrder, place, what, existence, areaM2, water, minutes, cautions);
  }
}
