package org.mottle.engine.season;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.mottle.engine.survey.WaterHistory;

/**
 * What counts for persistence.
 *
 * @param histories the water before a visit must be one of these; after rain for drainage, after
 *     irrigation or in dry days for coverage
 * @param weights of the grades
 */
public record PersistenceSettings(Set<WaterHistory> histories, GradeWeights weights) {
  public PersistenceSettings {
    if (histories.isEmpty() || histories.contains(WaterHistory.UNKNOWN)) {
      throw new IllegalArgumentException(
          "persistence is over surveys of known water history, was asked for "
              + (histories.isEmpty() ? "none" : histories)
              + "; choose after rain, after irrigation or dry days");
    }
    histories = Set.copyOf(histories);
  }

  /** Surveys after soaking rain: what stays wet because it does not drain. */
  public static PersistenceSettings drainage() {
    return new PersistenceSettings(Set.of(WaterHistory.AFTER_RAIN), GradeWeights.PROPOSAL);
  }

  /** Surveys after irrigation and in dry days: what stays dry or wet by the way it is watered. */
  public static PersistenceSettings coverage() {
    return new PersistenceSettings(
        Set.of(WaterHistory.AFTER_IRRIGATION, WaterHistory.DRYING), GradeWeights.PROPOSAL);
  }

  public PersistenceSettings withWeights(GradeWeights newWeights) {
    return new PersistenceSettings(histories, newWeights);
  }

  /** The histories in words. */
  String label() {
    return new TreeSet<>(histories)
        .stream().map(WaterHistory::label).collect(Collectors.joining(" or "));
  }
}
