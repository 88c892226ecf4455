package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.survey.Reading;
import org.mottle.export.problem.Problems;

/** Positions of which nothing is known are taken as exact; that is told. */
final class UntoldPositions {
  private static final String REMEDY =
      "say pos_sd_m or pos_src in the readings, or positions.jitter_m (--position-sd)";

  private UntoldPositions() {}

  static List<String> of(List<GreenSurvey> subjects, PositionSettings settings) {
    if (!Double.isNaN(settings.jitterM())) {
      return List.of();
    }
    List<Reading> used =
        subjects.stream()
            .flatMap(s -> s.readings().stream())
            .filter(r -> r.quality().used())
            .toList();
    List<Reading> untold = used.stream().filter(UntoldPositions::untold).toList();
    TreeSet<String> unknown = new TreeSet<>();
    untold.stream().map(r -> r.position().source()).filter(s -> !s.isBlank()).forEach(unknown::add);
    List<String> lines = new ArrayList<>();
    if (!unknown.isEmpty()) {
      lines.add(
          "pos_src "
              + Problems.listed(List.copyOf(unknown))
              + " is not known, known are "
              + Problems.listed(PositionSource.allNames(), PositionSource.allNames().size()));
    }
    if (!untold.isEmpty()) {
      String which =
          untold.size() == used.size()
              ? "positions are"
              : "the positions of " + untold.size() + " of " + used.size() + " readings are";
      lines.add(which + " taken as exact, since nothing says how exact they are; " + REMEDY);
    }
    return lines;
  }

  private static boolean untold(Reading r) {
    return Double.isNaN(r.position().sdM())
        && PositionSource.named(r.position().source()).isEmpty();
  }
}
