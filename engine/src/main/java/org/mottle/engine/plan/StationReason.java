package org.mottle.engine.plan;

/**
 * Why a station was chosen. Near a limit: calling the place is more of a gamble than on the mean of
 * the green. Far: its kriging variance is above the mean of the green. If neither holds, the one
 * that comes nearer to holding is given.
 */
public enum StationReason {
  NEAR_LIMIT,
  FAR_FROM_READINGS,
  BOTH
}
