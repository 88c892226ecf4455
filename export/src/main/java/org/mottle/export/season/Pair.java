package org.mottle.export.season;

import java.util.Optional;
import org.mottle.engine.season.Answer;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.DryDown;

/**
 * A green in two surveys, one after the other.
 *
 * @param greenId the green
 * @param before earlier survey
 * @param after later survey
 * @param change what changed, or why that cannot be said
 * @param dryDown how fast it dried, or why that cannot be said; empty without a change
 */
record Pair(
    String greenId,
    String before,
    String after,
    Answer<Change> change,
    Optional<Answer<DryDown>> dryDown) {

  String label() {
    return before + "-" + after;
  }

  Optional<DryDown> dried() {
    return dryDown.flatMap(Answer::value);
  }
}
