package org.mottle.engine.season;

import java.util.List;
import org.mottle.engine.survey.Refusal;

/** What stays wet or dry on a green over its surveys, or why that cannot be said. */
public sealed interface PersistenceOutcome permits Persistence, PersistenceOutcome.Refused {

  /** The surveys that do not count, each with the reason. */
  List<LeftOut> leftOut();

  /**
   * A survey that does not count.
   *
   * @param surveyId which
   * @param why in words
   */
  record LeftOut(String surveyId, String why) {
    @Override
    public String toString() {
      return surveyId + ": " + why;
    }
  }

  /** Too few surveys that can be compared. */
  record Refused(Refusal why, List<LeftOut> leftOut) implements PersistenceOutcome {
    public Refused {
      leftOut = List.copyOf(leftOut);
    }
  }
}
