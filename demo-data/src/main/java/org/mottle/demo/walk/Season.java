package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.Build;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.CatchCans;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.SphericalField;
import org.mottle.demo.truth.Survey;

/**
 * The whole invented season of one seed, in memory: true ground, plans, logs, catch cans. About
 * half a second and 7 MB. Immutable.
 */
public final class Season {

  private static final int CANS = 24;

  private final long seed;
  private final Map<String, GreenTruth> truths = new TreeMap<>();
  private final Rounds rounds;
  private final List<SurveyLog> logs = new ArrayList<>();
  private final Map<String, List<CatchCans.Can>> cans = new TreeMap<>();

  public Season(long seed) {
    this.seed = seed;
    SphericalField sand = new SphericalField(Survey.rangeM(Build.SAND));
    SphericalField soil = new SphericalField(Survey.rangeM(Build.PUSH_UP_SOIL));
    for (GreenSite green : CoursePlace.greens()) {
      boolean isSoil = green.build() == Build.PUSH_UP_SOIL;
      truths.put(green.id(), GreenTruth.draw(seed, green, isSoil ? soil : sand));
    }
    rounds = new Rounds(seed);
    for (Survey survey : Survey.values()) {
      logs.add(SurveyLog.of(seed, survey, rounds, truths));
    }
    cans.put("G1", audit("G1", List.of()));
    cans.put("G5", audit("G5", List.of("H5-2")));
  }

  public long seed() {
    return seed;
  }

  /** The true ground of a green. */
  public GreenTruth truth(String greenId) {
    GreenTruth truth = truths.get(greenId);
    if (truth == null) {
      throw new IllegalArgumentException("there is no green '" + greenId + "'");
    }
    return truth;
  }

  /** The logs of S1 to S6. */
  public List<SurveyLog> logs() {
    return List.copyOf(logs);
  }

  public SurveyLog log(Survey survey) {
    return logs.get(survey.ordinal());
  }

  /** The plans handed out. */
  public List<StationPlan> plans() {
    return rounds.plans();
  }

  /** Infill and points of interest, as plans of their own. */
  public List<StationPlan> extras() {
    return rounds.extras();
  }

  /** Catch cans by green: G1 and G5, 10 June. */
  public Map<String, List<CatchCans.Can>> cans() {
    return Map.copyOf(cans);
  }

  private List<CatchCans.Can> audit(String greenId, List<String> dead) {
    GreenSite green = CoursePlace.green(greenId);
    List<Point> inner =
        green.cells(0.5).stream().filter(c -> green.ring().depth(c.x(), c.y()) >= 0.5).toList();
    List<Point> places = Coverage.of(inner, CANS, Stream.of(seed, greenId, "audit", "places"));
    return CatchCans.read(seed, green, places, dead);
  }
}
