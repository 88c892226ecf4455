package org.mottle.export.read;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads station plans: points with {@code plan_id} (may be left out), {@code green_id}, {@code
 * st_id}, {@code seq} (order of the walk), {@code role} and {@code insertions}.
 */
public final class PlansReader {
  private static final String LAYER = "station";

  private PlansReader() {}

  /**
   * @param working CRS of the greens
   * @return one a plan and green, in the order of the file, stations by {@code seq}
   * @throws InputRefused with every problem of the file
   */
  public static List<StationPlan> read(String file, InputOptions options, Crs working) {
    FeatureTable table = FeatureFile.read(file, options, LAYER);
    Problems problems = new Problems();
    Columns columns = new Columns(table, options, problems);
    for (String needed : List.of("green_id", "st_id")) {
      problems.require(
          columns.find(needed).isPresent(),
          "%s has no column %s; its columns are %s",
          table.name(),
          needed,
          columns.named());
    }
    columns.requireMapped(FieldNames.ownOf(FieldNames.PLAN));
    problems.throwIfAny();
    Coordinate[] places = PointPlaces.of(table, working, problems);
    String[] plan = columns.texts("plan_id");
    String[] green = columns.texts("green_id");
    String[] station = columns.texts("st_id");
    Reading.Role[] role = Roles.of(columns, table, problems);
    int[] sequence = columns.wholes("seq", 0);
    int[] insertions = columns.wholes("insertions", 1);
    Map<List<String>, List<Integer>> rows = new LinkedHashMap<>();
    Map<List<String>, Integer> seen = new LinkedHashMap<>();
    for (int i = 0; i < places.length; i++) {
      String at = table.at(table.rows().get(i));
      problems.require(
          !station[i].isEmpty() && !green[i].isEmpty(),
          "%s: a planned station needs green_id and st_id, were '%s' and '%s'",
          at,
          green[i],
          station[i]);
      problems.require(
          insertions[i] >= 1, "%s: insertions must be 1 or more, was %s", at, insertions[i]);
      Integer before =
          seen.putIfAbsent(List.of(plan[i], green[i], station[i]), table.rows().get(i).number());
      problems.require(
          before == null,
          "%s: station %s of green %s stands in %s %s already; give each station its own st_id",
          at,
          station[i],
          green[i],
          table.unit(1),
          before);
      rows.computeIfAbsent(List.of(plan[i], green[i]), k -> new ArrayList<>()).add(i);
    }
    problems.throwIfAny();
    List<StationPlan> plans = new ArrayList<>();
    rows.forEach(
        (key, own) ->
            plans.add(
                new StationPlan(
                    key.get(0),
                    key.get(1),
                    own.stream()
                        .sorted(
                            (a, b) ->
                                sequence[a] != sequence[b]
                                    ? Integer.compare(sequence[a], sequence[b])
                                    : Integer.compare(a, b))
                        .map(
                            i ->
                                new PlannedStation(
                                    station[i], places[i].x, places[i].y, role[i], insertions[i]))
                        .toList())));
    return plans;
  }
}
