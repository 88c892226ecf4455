package org.mottle.export.read;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoublePredicate;
import java.util.function.IntPredicate;
import org.mottle.export.problem.Problems;

/** Checks of whole columns: one line a column, however many rows are wrong. */
final class CellChecks {
  private static final int SHOWN = 8;

  private final FeatureTable table;
  private final Problems problems;

  CellChecks(FeatureTable table, Problems problems) {
    this.table = table;
    this.problems = problems;
  }

  /** Values that are recorded must be fine. */
  void numbers(String name, double[] values, DoublePredicate fine, String rule) {
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i]) && !fine.test(values[i])) {
        wrong.add("%d (%s)".formatted(table.rows().get(i).number(), values[i]));
      }
    }
    problems.require(
        wrong.isEmpty(),
        "%s: %s must be %s, but not in %s %s; correct it or leave it empty",
        table.name(),
        name,
        rule,
        table.unit(wrong.size()),
        Problems.listed(wrong, SHOWN));
  }

  /** Row numbers of the rows that are so. */
  List<Integer> rows(IntPredicate so) {
    List<Integer> rows = new ArrayList<>();
    for (int i = 0; i < table.rows().size(); i++) {
      if (so.test(i)) {
        rows.add(table.rows().get(i).number());
      }
    }
    return rows;
  }

  /** Each key at most once. */
  void once(List<List<String>> keys, String what, String remedy) {
    Map<List<String>, Integer> seen = new HashMap<>();
    for (int i = 0; i < keys.size(); i++) {
      int number = table.rows().get(i).number();
      Integer before = seen.putIfAbsent(keys.get(i), number);
      problems.require(
          before == null,
          "%s: %s %s stands in %s %s and %s; %s",
          table.name(),
          what,
          keys.get(i).get(0),
          table.unit(2),
          before,
          number,
          remedy);
    }
  }
}
