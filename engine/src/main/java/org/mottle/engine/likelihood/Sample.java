package org.mottle.engine.likelihood;

import org.mottle.engine.observation.Observations;

/**
 * One green in one survey, as the likelihood sees it: stations with a mean of their own.
 *
 * @param green which green; its surveys are not independent of one another
 * @param survey which survey; greens of one survey share a sill
 * @param observations one value a station, with its position error if any; variances of measurement
 *     and common errors are not looked at, the nugget holds them
 * @param insertions [n] insertions behind each value
 * @param replicates what the insertions say of their own variance
 */
public record Sample(
    String green,
    String survey,
    Observations observations,
    int[] insertions,
    Replicates replicates) {

  public Sample {
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

  /** Without values so far from the others that the variogram is found without them. */
  public Sample screened() {
    return Screening.withoutFar(this);
  }

  int size() {
    return observations.size();
  }

  Sample rows(int[] rows) {
    int[] kept = new int[rows.length];
    for (int i = 0; i < rows.length; i++) {
      kept[i] = insertions[rows[i]];
    }
    return new Sample(green, survey, observations.rows(rows), kept, replicates);
  }
}
