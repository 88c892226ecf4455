package org.mottle.engine.track;

import org.mottle.engine.survey.Refusal;

/** Where a reading was taken by its time, or why that cannot be told. */
public sealed interface TrackPlace {

  /**
   * @param x east, m
   * @param y north, m
   * @param sdM standard error per axis, m
   */
  record At(double x, double y, double sdM) implements TrackPlace {}

  /**
   * @param why what stands in the way, and what would help
   */
  record NotPlaced(Refusal why) implements TrackPlace {}
}
