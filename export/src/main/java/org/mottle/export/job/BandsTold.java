package org.mottle.export.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.problem.Problems;
import org.mottle.export.settings.BandOutcome;
import org.mottle.export.settings.Bands;

/** What to tell of the bands of a run: each thing once, with the greens it holds for. */
final class BandsTold {
  private final Map<Refusal, Set<String>> missing = new LinkedHashMap<>();
  private final Map<String, Set<String>> provisional = new LinkedHashMap<>();
  private final Map<String, Set<String>> remarks = new LinkedHashMap<>();

  private BandsTold() {}

  static List<String> of(List<GreenSurvey> subjects, Bands bands) {
    BandsTold told = new BandsTold();
    boolean rules = false;
    for (GreenSurvey subject : subjects) {
      var outcome = bands.outcome(subject.green(), subject.readings());
      rules |= outcome.isPresent();
      outcome.ifPresent(o -> told.take(subject, o));
    }
    return rules ? told.lines() : noRule(subjects);
  }

  private static List<String> noRule(List<GreenSurvey> subjects) {
    return subjects.stream().allMatch(s -> s.band().isEmpty())
        ? List.of("no classes: no band is set; the site's agronomist sets it in the settings")
        : List.of();
  }

  private void take(GreenSurvey subject, BandOutcome outcome) {
    String id = subject.green().id();
    if (outcome instanceof BandOutcome.NotFound none) {
      // a visit none of whose readings may be used is told of as such
      if (subject.readings().stream().anyMatch(r -> r.quality().used())) {
        put(missing, none.why(), id);
      }
    } else if (outcome instanceof BandOutcome.Found found) {
      TargetBand band = found.of();
      if (!band.provisional().isEmpty()) {
        put(provisional, band.provisional(), id);
      }
      found.remarks().forEach(r -> put(remarks, r, id));
    }
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>();
    missing.forEach((why, ids) -> lines.add("no classes for " + greens(ids) + ": " + why));
    provisional.forEach(
        (why, ids) -> lines.add("provisional band for " + greens(ids) + ": " + why));
    remarks.forEach((remark, ids) -> lines.add("band of " + greens(ids) + ": " + remark));
    return lines;
  }

  private static <K> void put(Map<K, Set<String>> greens, K key, String id) {
    greens.computeIfAbsent(key, k -> new LinkedHashSet<>()).add(id);
  }

  private static String greens(Set<String> ids) {
    return "green " + Problems.listed(List.copyOf(ids));
  }
}
