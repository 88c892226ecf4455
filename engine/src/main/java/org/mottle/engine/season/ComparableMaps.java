package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.mottle.engine.mapping.Surface;
import org.mottle.engine.season.PersistenceOutcome.LeftOut;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.survey.WaterHistory;

/**
 * The maps of a green that can be counted together: of the water history asked for, with
 * probabilities, of one outline and grid, read with rods of one length. Where outlines or rods
 * differ the greatest group stays, the earliest given among equals.
 *
 * @param maps those that count
 * @param leftOut the others, each with the reason
 * @param remarks of those that count
 */
record ComparableMaps(List<SurveyedMap> maps, List<LeftOut> leftOut, List<String> remarks) {
  private static final double SAME_M = 1e-6;

  static ComparableMaps of(List<SurveyedMap> maps, PersistenceSettings settings) {
    requireOneGreen(maps);
    List<LeftOut> leftOut = new ArrayList<>();
    List<SurveyedMap> able = new ArrayList<>();
    for (SurveyedMap m : maps) {
      String why = unable(m, settings);
      if (why.isEmpty()) {
        able.add(m);
      } else {
        leftOut.add(new LeftOut(m.surveyId(), why));
      }
    }
    List<SurveyedMap> kept = greatest(able);
    for (SurveyedMap m : able) {
      if (!kept.contains(m)) {
        leftOut.add(new LeftOut(m.surveyId(), unlike(m, kept.get(0))));
      }
    }
    return new ComparableMaps(kept, leftOut, remarks(kept));
  }

  private static void requireOneGreen(List<SurveyedMap> maps) {
    TreeSet<String> greens = new TreeSet<>();
    TreeSet<String> surveys = new TreeSet<>();
    for (SurveyedMap m : maps) {
      greens.add(m.map().subject().green().id());
      if (!surveys.add(m.surveyId())) {
        throw new IllegalArgumentException(
            "survey " + m.surveyId() + " is there twice; give each survey of a green once");
      }
    }
    if (greens.size() > 1) {
      throw new IllegalArgumentException(
          "persistence is of one green, was given " + greens + "; give the maps of one at a time");
    }
  }

  private static String unable(SurveyedMap m, PersistenceSettings settings) {
    if (m.history() == WaterHistory.UNKNOWN) {
      return "the water before it is not on record";
    }
    if (!settings.histories().contains(m.history())) {
      return m.history().label() + ", not " + settings.label();
    }
    if (m.map().surface().chances().isEmpty()) {
      return "its map has no probabilities (no band, or no standard deviation)";
    }
    if (settings.weights().of(m.grade()) == 0) {
      return m.grade().map(g -> "grade " + g).orElse("not graded") + ", which counts for nothing";
    }
    if (m.rods().isEmpty()) {
      return "its rods are not recorded (rod_mm)";
    }
    return m.rods().contains("and") ? "its rods are of several lengths, " + m.rods() : "";
  }

  private static List<SurveyedMap> greatest(List<SurveyedMap> able) {
    List<SurveyedMap> greatest = List.of();
    for (SurveyedMap first : able) {
      List<SurveyedMap> like = able.stream().filter(m -> unlike(m, first).isEmpty()).toList();
      if (like.size() > greatest.size()) {
        greatest = like;
      }
    }
    return greatest;
  }

  private static String unlike(SurveyedMap m, SurveyedMap other) {
    Surface a = m.map().surface();
    Surface b = other.map().surface();
    if (!m.map()
        .subject()
        .green()
        .outline()
        .equalsExact(other.map().subject().green().outline(), SAME_M)) {
      return "its outline of the green is not that of " + other.surveyId();
    }
    if (!a.cells().grid().equals(b.cells().grid())) {
      return "its cells are not those of " + other.surveyId();
    }
    return m.rods().equals(other.rods())
        ? ""
        : "rods of %s, those of %s have %s".formatted(m.rods(), other.surveyId(), other.rods());
  }

  private static List<String> remarks(List<SurveyedMap> kept) {
    List<String> remarks = new ArrayList<>();
    TreeSet<String> bands =
        kept.stream()
            .map(m -> m.map().subject().band().map(ComparableMaps::words).orElse("none"))
            .collect(Collectors.toCollection(TreeSet::new));
    if (bands.size() > 1) {
      remarks.add(
          "the surveys were mapped against different bands ("
              + String.join("; ", bands)
              + "): wet and dry are by the band of each");
    }
    if (kept.size() >= 2 && kept.size() < 3) {
      remarks.add(
          "2 surveys: what was wet in both is likely, not sure, to be so in more than half of"
              + " surveys; a third would show");
    }
    return remarks;
  }

  private static String words(TargetBand band) {
    return band.lowPct() + " to " + band.highPct() + " %";
  }
}
