package org.mottle.engine.irrigation;

/**
 * Something to know before the figures are used.
 *
 * @param kind what it is about
 * @param text one sentence with the values
 */
public record Caution(Kind kind, String text) {

  /** What a caution is about. */
  public enum Kind {
    WIND,
    FEW_CANS,
    PRESSURE,
    MOUTHS,
    ALIKE,
    RUNS,
    SHORT_RUN,
    OUTSIDE,
    WINDOW,
    EDGE,
    HEAD_FIRST,
    RUN_TIME
  }
}
