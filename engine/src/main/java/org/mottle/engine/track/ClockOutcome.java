package org.mottle.engine.track;

import org.mottle.engine.survey.Refusal;

/** By how much the clock of the readings was ahead of that of the track, or why nobody can tell. */
public sealed interface ClockOutcome {

  /**
   * @param offsetS to subtract from the times of the readings, s; a whole number of hours where the
   *     search came close to one
   * @param searchedS what the search itself found, s
   * @param standardErrorS of {@code searchedS}, s
   * @param hours by how many whole hours the clock was wrong, as when one clock keeps summer time;
   *     0 when it was not, or not by whole hours
   * @param met how many readings fall into the track
   * @param readings how many readings have a time
   * @param note in words, what the user should know; empty when the clocks agree
   */
  record Found(
      double offsetS,
      double searchedS,
      double standardErrorS,
      int hours,
      int met,
      int readings,
      String note)
      implements ClockOutcome {}

  /**
   * @param why what stands in the way, and what would help
   */
  record NotFound(Refusal why) implements ClockOutcome {}
}
