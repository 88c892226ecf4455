package org.mottle.engine.order;

import org.mottle.engine.check.Check;
import org.mottle.engine.design.StationPlan;

/**
 * What is expected of a walk over the stations of a plan. The shares are common practice, no
 * source: one station in 25 is passed by, one in 30 read once more than planned.
 *
 * @param skipShare share of stations that are passed by, in (0, 0.5)
 * @param doubleShare share of stations that are read once more than planned, in (0, 0.5)
 * @param paceMS pace between stations to begin with, m/s
 * @param insertionS time of a first insertion to begin with, s
 * @param placedSdM standard error per axis of a station found by pacing, m
 * @param inferredBelow a reading whose station is less likely than this counts as inferred
 * @param worstSdM a reading whose place is less certain than this is not placed, m per axis
 */
public record OrderSettings(
    double skipShare,
    double doubleShare,
    double paceMS,
    double insertionS,
    double placedSdM,
    double inferredBelow,
    double worstSdM) {

  public static final OrderSettings DEFAULT =
      new OrderSettings(0.04, 0.03, StationPlan.PACE_M_S, StationPlan.INSERTION_S, 0.7, 0.9, 6);

  public OrderSettings {
    Check.within("share of stations passed by", skipShare, 1e-6, 0.5, "");
    Check.within("share of stations read once more", doubleShare, 1e-6, 0.5, "");
    Check.above("pace", paceMS, 0, "m/s");
    Check.above("time of an insertion", insertionS, 0, "s");
    Check.atLeast("standard error of a station", placedSdM, 0, "m");
    Check.within("least likelihood of a sure station", inferredBelow, 0, 1, "");
    Check.above("worst standard error", worstSdM, 0, "m");
  }
}
