package org.mottle.export.calibration;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The results of one generator on one run of seeds.
 *
 * @param courses name of the generator
 * @param seeds which
 * @param methods names, in order
 * @param results one a seed, in order
 */
record Block(String courses, Seeds seeds, List<String> methods, List<CourseResult> results) {

  /** Group of the maps none of whose stations was chosen for what is seen there. */
  static final String NOT_CHOSEN = "without points of interest";

  List<GreenScore> scores(String method) {
    return CourseResult.scores(results, method);
  }

  /**
   * Parts of the greens by name: every survey, every green, and, where some greens have stations
   * chosen for what is seen there, the greens without.
   */
  Map<String, Predicate<GreenScore.Label>> groups() {
    Map<String, Predicate<GreenScore.Label>> groups = new LinkedHashMap<>();
    for (String survey : names(GreenScore.Label::survey)) {
      groups.put(survey, label -> label.survey().equals(survey));
    }
    for (String green : names(GreenScore.Label::green)) {
      groups.put(green, label -> label.green().equals(green));
    }
    if (scores(methods.get(0)).stream().anyMatch(s -> s.label().chosen())) {
      groups.put(NOT_CHOSEN, label -> !label.chosen());
    }
    return groups;
  }

  List<GreenScore> scores(String method, Predicate<GreenScore.Label> group) {
    return scores(method).stream().filter(s -> group.test(s.label())).toList();
  }

  private List<String> names(Function<GreenScore.Label, String> of) {
    return scores(methods.get(0)).stream()
        .map(GreenScore::label)
        .map(of)
        .distinct()
        .sorted()
        .toList();
  }
}
