package org.mottle.engine.observation;

/** What to do with observations that share a place. */
public enum DuplicatePolicy {
  /** Stop and name the rows. */
  REJECT,
  /** One observation with the mean value; its measurement variance is that of the mean. */
  AVERAGE,
  /** Keep the first row, leave out the others. */
  KEEP_FIRST
}
