package org.mottle.engine.mapping;

import java.util.List;
import org.mottle.engine.survey.Refusal;

/** What came of one green in one survey: a map, or the reason why there is none. */
public sealed interface Outcome {

  GreenSurvey subject();

  /** The readings gathered by station. */
  Stations stations();

  /** Statistics of the station values, those chosen for what is seen there left out. */
  ReadingSummary summary();

  /** What a reader of the map should know, in words. */
  List<String> remarks();

  /** No map; the summary of the readings stands. */
  record NoMap(
      GreenSurvey subject,
      Stations stations,
      ReadingSummary summary,
      List<String> remarks,
      Refusal why)
      implements Outcome {
    public NoMap {
      remarks = List.copyOf(remarks);
    }
  }
}
