package org.mottle.export.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mottle.engine.mapping.Coincidence;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.review.Fractions;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.export.field.FieldWork;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.Greens;
import org.mottle.export.read.InputOptions.MoistureUnit;
import org.mottle.export.read.Readings;

/** Greens and readings brought together: what is mapped, and whether it can be. */
final class Subjects {
  private final MapRequest request;

  Subjects(MapRequest request) {
    this.request = request;
  }

  /**
   * @throws InputRefused when a place is read twice and that is not allowed, or when the settings
   *     name a green or a survey that is not there
   */
  List<GreenSurvey> of(Greens greens, Readings readings) {
    List<GreenSurvey> subjects = paired(greens, readings);
    check(subjects, greens);
    return subjects;
  }

  /** The visits of a review, each with what was found in its way. */
  List<GreenSurvey> of(Greens greens, FieldWork work) {
    List<GreenSurvey> subjects = new ArrayList<>();
    for (ReviewedVisit v : work.reviewed().visits()) {
      Green green = v.visit().green();
      subjects.add(
          new GreenSurvey(
              green,
              v.visit().surveyId(),
              v.visit().readings(),
              request.site().bands().bandOf(green, v.visit().readings()),
              v.obstacle(),
              work.errors(v)));
    }
    check(subjects, greens);
    return subjects;
  }

  /** One a green and survey, in the order of the greens' file and of the surveys' first reading. */
  private List<GreenSurvey> paired(Greens greens, Readings readings) {
    Set<String> surveys = new LinkedHashSet<>();
    readings.readings().forEach(r -> surveys.add(r.label().surveyId()));
    Map<String, Map<String, List<Reading>>> byGreen = new LinkedHashMap<>();
    for (Reading r : readings.readings()) {
      byGreen
          .computeIfAbsent(r.label().greenId(), k -> new LinkedHashMap<>())
          .computeIfAbsent(r.label().surveyId(), k -> new ArrayList<>())
          .add(r);
    }
    List<GreenSurvey> subjects = new ArrayList<>();
    for (String survey : surveys) {
      for (Green green : greens.greens()) {
        List<Reading> own =
            byGreen.getOrDefault(green.id(), Map.of()).getOrDefault(survey, List.of());
        // a green that one of several surveys left out is no failure of that survey
        if (!own.isEmpty() || surveys.size() == 1) {
          subjects.add(
              asked(
                  new GreenSurvey(green, survey, own, request.site().bands().bandOf(green, own))));
        }
      }
    }
    return subjects;
  }

  /**
   * A green read in fractions among others read in per cent: asked about, never mapped as it is.
   */
  private GreenSurvey asked(GreenSurvey subject) {
    if (request.site().unit() != MoistureUnit.ASK) {
      return subject;
    }
    double[] used =
        subject.readings().stream()
            .filter(r -> r.quality().used())
            .mapToDouble(Reading::pct)
            .toArray();
    return Fractions.refusal(used).map(subject::withObstacle).orElse(subject);
  }

  private void check(List<GreenSurvey> subjects, Greens greens) {
    Problems problems = new Problems();
    if (request.site().mapping().duplicates() == DuplicatePolicy.REJECT) {
      for (GreenSurvey subject : subjects) {
        for (Coincidence pair : Coincidence.of(subject)) {
          problems.add(
              "%s; use --duplicates average or keep-first, or correct the file", pair.toString());
        }
      }
    }
    List<String> known = greens.greens().stream().map(Green::id).toList();
    for (String green : request.site().bands().greens().keySet()) {
      problems.require(
          known.contains(green),
          "%s, bands.greens: there is no green '%s'; there are %s",
          request.site().bands().source(),
          green,
          Problems.listed(known));
    }
    problems.throwIfAny();
  }

  /** What to tell of greens that none of several surveys read; nothing when all were. */
  static List<String> unread(List<GreenSurvey> subjects, Greens greens) {
    List<String> read = subjects.stream().map(s -> s.green().id()).toList();
    List<String> unread =
        greens.greens().stream().map(Green::id).filter(id -> !read.contains(id)).toList();
    return unread.isEmpty()
        ? List.of()
        : List.of("no survey has a reading of green " + Problems.listed(unread));
  }
}
