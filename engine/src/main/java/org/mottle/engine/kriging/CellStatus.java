package org.mottle.engine.kriging;

/** What became of one estimate. */
public enum CellStatus {
  /** There is a value. */
  ESTIMATED,
  /** Fewer observations within reach than the drift has terms, or none. */
  TOO_FEW_NEIGHBOURS,
  /** The system could not be solved soundly; no value is given. */
  ILL_CONDITIONED
}
