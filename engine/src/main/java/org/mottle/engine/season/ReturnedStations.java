package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;

/**
 * Stations that were gone back to. Where the places recorded for stations of one name scatter over
 * the visits as their errors of position let expect, the surveyor stood at one place and the
 * records are several measurements of it: their mean by precision is where it is, with the variance
 * v = 1 / Σ 1/(s² + b²) an axis, and what is between two visits there is not displaced but by a
 * return error of {@value #RETURN_M} m an axis (our choice).
 *
 * <p>The scatter is compared visit by visit: the mean square of recorded separations over the
 * variance told must lie from {@value #LEAST} to {@value #MOST}. Below it the places were copied
 * from a plan, and the surveyor may have stood anywhere near; above it names were used anew. Such
 * visits stay as recorded.
 */
final class ReturnedStations {
  /** Standard deviation per axis of where a probe goes in at a station gone back to, m. */
  static final double RETURN_M = 0.3;

  private static final double LEAST = 0.2;
  private static final double MOST = 3;

  /** Names in common from which the scatter can be compared. */
  private static final int NAMES = 5;

  private ReturnedStations() {}

  /** A place that is gone back to, as the visits so far have it. */
  private static final class Site {
    private final int number;
    private double x;
    private double y;
    private double precision;

    Site(int number) {
      this.number = number;
    }

    void add(double px, double py, double variance) {
      double w = 1 / variance;
      x = (precision * x + w * px) / (precision + w);
      y = (precision * y + w * py) / (precision + w);
      precision += w;
    }
  }

  /**
   * The surveys with their returned stations at one place each.
   *
   * @param names of the stations of each survey; empty text where there is none
   */
  static List<SeenSurvey> of(List<SeenSurvey> surveys, List<List<String>> names) {
    Map<String, Site> sites = new HashMap<>();
    List<Site[]> of = new ArrayList<>();
    for (int s = 0; s < surveys.size(); s++) {
      of.add(
          of.isEmpty() || alike(surveys.get(s), names.get(s), sites)
              ? join(surveys.get(s), names.get(s), sites)
              : new Site[surveys.get(s).size()]);
    }
    int[] visits = new int[sites.size()];
    of.forEach(v -> Arrays.stream(v).filter(x -> x != null).forEach(x -> visits[x.number]++));
    List<SeenSurvey> placed = new ArrayList<>();
    for (int s = 0; s < surveys.size(); s++) {
      placed.add(placed(surveys.get(s), of.get(s), visits));
    }
    return placed;
  }

  private static double variance(Observations o, int i) {
    PositionError e = o.positionError();
    return e.jitterSdM(i) * e.jitterSdM(i) + e.shiftSdM() * e.shiftSdM();
  }

  private static boolean alike(SeenSurvey survey, List<String> names, Map<String, Site> sites) {
    Observations o = survey.observations();
    double squares = 0;
    double told = 0;
    int count = 0;
    for (int i = 0; i < o.size(); i++) {
      Site site = sites.get(names.get(i));
      if (site != null) {
        double dx = o.x(i) - site.x;
        double dy = o.y(i) - site.y;
        squares += (dx * dx + dy * dy) / 2;
        told += variance(o, i) + 1 / site.precision;
        count++;
      }
    }
    return count >= NAMES && squares >= LEAST * told && squares <= MOST * told;
  }

  private static Site[] join(SeenSurvey survey, List<String> names, Map<String, Site> sites) {
    Observations o = survey.observations();
    Site[] of = new Site[o.size()];
    for (int i = 0; i < of.length; i++) {
      String name = names.get(i);
      boolean once = names.indexOf(name) == names.lastIndexOf(name);
      if (!name.isEmpty() && once && variance(o, i) > 0) {
        of[i] = sites.computeIfAbsent(name, k -> new Site(sites.size()));
        of[i].add(o.x(i), o.y(i), variance(o, i));
      }
    }
    return of;
  }

  private static SeenSurvey placed(SeenSurvey survey, Site[] of, int[] visits) {
    Observations o = survey.observations();
    double[] x = o.xs();
    double[] y = o.ys();
    double[] jitter = o.positionError().jitterSdM();
    int[] site = new int[x.length];
    for (int i = 0; i < x.length; i++) {
      boolean returned = of[i] != null && visits[of[i].number] > 1;
      site[i] = returned ? of[i].number : SeenSurvey.ONCE;
      if (returned) {
        x[i] = of[i].x;
        y[i] = of[i].y;
        jitter[i] = Math.sqrt(1 / of[i].precision);
      }
    }
    return new SeenSurvey(
        Observations.of(x, y, o.values())
            .withPositionError(new PositionError(jitter, o.positionError().shiftSdM()))
            .withCommonErrors(o.commonErrors()),
        survey.insertions(),
        site);
  }
}
