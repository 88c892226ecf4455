package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One course under all methods.
 *
 * @param seed of the course
 * @param scores by name of the method
 * @param claims variograms found, by name of the method
 */
record CourseResult(
    long seed, Map<String, List<GreenScore>> scores, Map<String, List<ClaimScore>> claims) {

  static CourseResult of(Courses courses, long seed, List<Method> methods) {
    List<GreenCase> course = courses.of(seed);
    Map<String, List<GreenScore>> scores = new LinkedHashMap<>();
    Map<String, List<ClaimScore>> claims = new LinkedHashMap<>();
    for (Method method : methods) {
      Method.Mapping mapping = method.map(course);
      if (mapping.greens().size() != course.size()) {
        throw new IllegalStateException(
            method.name() + " made " + mapping.greens().size() + " maps of " + course.size());
      }
      scores.put(method.name(), mapping.greens().stream().map(GreenScore::of).toList());
      claims.put(
          method.name(),
          mapping.variograms().stream().map(claim -> ClaimScore.of(claim, course)).toList());
    }
    return new CourseResult(seed, scores, claims);
  }

  static List<GreenScore> scores(List<CourseResult> results, String method) {
    List<GreenScore> all = new ArrayList<>();
    results.forEach(result -> all.addAll(result.scores().get(method)));
    return all;
  }

  static List<ClaimScore> claims(List<CourseResult> results, String method) {
    List<ClaimScore> all = new ArrayList<>();
    results.forEach(result -> all.addAll(result.claims().get(method)));
    return all;
  }
}
