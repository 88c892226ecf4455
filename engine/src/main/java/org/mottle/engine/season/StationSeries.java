package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Stations;

/**
 * Moisture at the same stations over several surveys, % by volume. Immutable; arrays are copied in
 * and never handed out.
 */
public final class StationSeries {
  private final List<String> stations;
  private final List<String> surveys;
  private final double[][] pct;

  /**
   * @param stations names, each once
   * @param surveys names, each once, in the order of time
   * @param pct [stations][surveys] % by volume; NaN where a station was not read
   */
  public StationSeries(List<String> stations, List<String> surveys, double[][] pct) {
    requireOnce("station", stations);
    requireOnce("survey", surveys);
    if (pct.length != stations.size()
        || Arrays.stream(pct).anyMatch(row -> row.length != surveys.size())) {
      throw new IllegalArgumentException(
          "%d stations and %d surveys need a row a station and a value a survey"
              .formatted(stations.size(), surveys.size()));
    }
    this.stations = List.copyOf(stations);
    this.surveys = List.copyOf(surveys);
    this.pct = Arrays.stream(pct).map(double[]::clone).toArray(double[][]::new);
  }

  /**
   * The stations of one green by name; those without a name, and those whose name stands at two
   * places of a survey, are left out of it.
   *
   * @param outcomes one a survey, in the order of time; a map is not needed
   */
  public static StationSeries of(List<? extends Outcome> outcomes) {
    List<String> surveys = outcomes.stream().map(o -> o.subject().surveyId()).toList();
    Map<String, double[]> rows = new LinkedHashMap<>();
    for (int t = 0; t < outcomes.size(); t++) {
      Set<String> seen = new HashSet<>();
      for (Stations.Station s : outcomes.get(t).stations().stations()) {
        if (!s.name().isEmpty()) {
          double[] row = rows.computeIfAbsent(s.name(), k -> unread(surveys.size()));
          row[t] = seen.add(s.name()) ? s.value() : Double.NaN;
        }
      }
    }
    return new StationSeries(
        new ArrayList<>(rows.keySet()), surveys, rows.values().toArray(double[][]::new));
  }

  private static double[] unread(int surveys) {
    double[] row = new double[surveys];
    Arrays.fill(row, Double.NaN);
    return row;
  }

  private static void requireOnce(String what, List<String> names) {
    Set<String> seen = new HashSet<>();
    for (String name : names) {
      if (!seen.add(name)) {
        throw new IllegalArgumentException(what + " " + name + " is there twice; name each once");
      }
    }
  }

  public List<String> stations() {
    return stations;
  }

  public List<String> surveys() {
    return surveys;
  }

  /** % by volume; NaN where the station was not read. */
  public double pct(int station, int survey) {
    return pct[station][survey];
  }

  /** Number of surveys in which a station was read. */
  public int times(int station) {
    return (int) Arrays.stream(pct[station]).filter(v -> !Double.isNaN(v)).count();
  }
}
