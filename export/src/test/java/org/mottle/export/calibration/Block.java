package org.mottle.export.calibration;

import java.util.List;

/**
 * The results of one generator on one run of seeds.
 *
 * @param courses name of the generator
 * @param seeds which
 * @param methods names, in order
 * @param results one a seed, in order
 */
record Block(String courses, Seeds seeds, List<String> methods, List<CourseResult> results) {

  List<GreenScore> scores(String method) {
    return CourseResult.scores(results, method);
  }

  List<GreenScore> scores(String method, String survey) {
    return scores(method).stream().filter(s -> s.survey().equals(survey)).toList();
  }

  List<String> surveys() {
    return scores(methods.get(0)).stream().map(GreenScore::survey).distinct().sorted().toList();
  }
}
