package org.mottle.engine.season;

import org.mottle.engine.observation.Observations;

/**
 * One survey of a green as the season sees it: its values with the errors of their places and those
 * they have in common, which are this visit's own.
 *
 * @param observations one value a station; variances of measurement are not looked at, the nugget
 *     holds them
 * @param insertions [n] behind each value
 */
public record SeenSurvey(Observations observations, int[] insertions) {

  public SeenSurvey {
    insertions = insertions.clone();
    if (insertions.length != observations.size()) {
      throw new IllegalArgumentException(
          insertions.length + " counts of insertions for " + observations.size() + " stations");
    }
  }

  @Override
  public int[] insertions() {
    return insertions.clone();
  }

  int size() {
    return observations.size();
  }
}
