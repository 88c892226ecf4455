package org.mottle.engine.plan;

/** Why a ranking ends where it does. */
public enum StopReason {
  /** As many stations as asked for. */
  ENOUGH,
  /** The next station would gain less than the least gain worth a walk. */
  GAIN_TOO_SMALL,
  /** No place is left that is inside the inset and clear of the other stations. */
  NO_PLACE_LEFT,
  /** None of the draws has a kriging system that could be solved. */
  NO_SOUND_DRAW
}
