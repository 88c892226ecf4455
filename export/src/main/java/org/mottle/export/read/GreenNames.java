package org.mottle.export.read;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.mottle.engine.survey.Green;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/** Names of greens in tables that go with a file of greens. */
final class GreenNames {
  private GreenNames() {}

  /** Names that are given must be those of greens; one line for each that is not. */
  static void requireKnown(FeatureTable table, String[] named, Greens greens, Problems problems) {
    List<String> known = greens.greens().stream().map(Green::id).toList();
    Map<String, List<Integer>> unknown = new LinkedHashMap<>();
    IntStream.range(0, named.length)
        .filter(i -> !named[i].isEmpty() && !known.contains(named[i]))
        .forEach(
            i ->
                unknown
                    .computeIfAbsent(named[i], k -> new java.util.ArrayList<>())
                    .add(table.rows().get(i).number()));
    unknown.forEach(
        (name, rows) ->
            problems.add(
                "%s: green %s in %s %s is not in %s%s; it has %s",
                table.name(),
                name,
                table.unit(rows.size()),
                Problems.listed(rows),
                greens.source(),
                Nearest.to(name, known).map(n -> ", did you mean " + n + "?").orElse(""),
                Problems.listed(known)));
  }
}
