package org.mottle.engine.observation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.mottle.engine.check.Check;

/**
 * Finds observations that share a place and settles what becomes of them. Two observations share a
 * place when they are within the tolerance of one another, and so do all that are linked by such
 * pairs. Linear in the number of observations where few share a place.
 */
public final class Duplicates {

  /** What came of it. */
  public sealed interface Outcome permits Resolved, Rejected {}

  /**
   * One observation a place.
   *
   * @param observations what is left, in the order of the first row of each place
   * @param merged how many observations were averaged away or left out
   * @param groups row numbers, from 0, of each set that shared a place
   */
  public record Resolved(Observations observations, int merged, List<int[]> groups)
      implements Outcome {}

  /**
   * The policy was to reject, and places are shared.
   *
   * @param groups row numbers, from 0, of each set that shares a place
   * @param lines one line a set: rows (from 1), coordinates, values, remedy
   */
  public record Rejected(List<int[]> groups, List<String> lines) implements Outcome {}

  private final Observations observations;
  private final double tolerance;

  private Duplicates(Observations observations, double tolerance) {
    this.observations = observations;
    this.tolerance = Check.atLeast("tolerance of a shared place", tolerance, 0, "m");
  }

  /**
   * @param tolerance m; 0 for places that are equal to the last digit
   */
  public static Outcome resolve(
      Observations observations, double tolerance, DuplicatePolicy policy) {
    List<int[]> groups = new Duplicates(observations, tolerance).groups();
    if (groups.isEmpty()) {
      return new Resolved(observations, 0, groups);
    }
    if (policy == DuplicatePolicy.REJECT) {
      return new Rejected(groups, groups.stream().map(g -> line(observations, g)).toList());
    }
    return resolved(observations, groups, policy == DuplicatePolicy.AVERAGE);
  }

  private List<int[]> groups() {
    int n = observations.size();
    int[] parent = new int[n];
    Arrays.setAll(parent, i -> i);
    double cell = tolerance > 0 ? tolerance : 1;
    Map<Cell, List<Integer>> cells = new HashMap<>();
    for (int i = 0; i < n; i++) {
      long column = (long) Math.floor(observations.x(i) / cell);
      long row = (long) Math.floor(observations.y(i) / cell);
      for (long c = column - 1; c <= column + 1; c++) {
        for (long r = row - 1; r <= row + 1; r++) {
          for (int j : cells.getOrDefault(new Cell(c, r), List.of())) {
            if (together(i, j)) {
              join(parent, i, j);
            }
          }
        }
      }
      cells.computeIfAbsent(new Cell(column, row), k -> new ArrayList<>()).add(i);
    }
    return collect(parent);
  }

  private record Cell(long column, long row) {}

  private boolean together(int i, int j) {
    double dx = observations.x(i) - observations.x(j);
    double dy = observations.y(i) - observations.y(j);
    return Math.sqrt(dx * dx + dy * dy) <= tolerance;
  }

  private static int root(int[] parent, int i) {
    while (parent[i] != i) {
      parent[i] = parent[parent[i]];
      i = parent[i];
    }
    return i;
  }

  /** The smaller row stays the root. */
  private static void join(int[] parent, int i, int j) {
    int a = root(parent, i);
    int b = root(parent, j);
    parent[Math.max(a, b)] = Math.min(a, b);
  }

  private static List<int[]> collect(int[] parent) {
    Map<Integer, List<Integer>> byRoot = new java.util.TreeMap<>();
    for (int i = 0; i < parent.length; i++) {
      int root = root(parent, i);
      if (root != i) {
        byRoot.computeIfAbsent(root, r -> new ArrayList<>(List.of(r))).add(i);
      }
    }
    return byRoot.values().stream()
        .map(rows -> rows.stream().mapToInt(Integer::intValue).toArray())
        .toList();
  }

  private static String line(Observations observations, int[] group) {
    List<String> rows = new ArrayList<>();
    List<String> values = new ArrayList<>();
    for (int row : group) {
      rows.add(Integer.toString(row + 1));
      values.add(Double.toString(observations.value(row)));
    }
    return String.format(
        Locale.ROOT,
        "observations %s share a place, E %.2f N %.2f, values %s: average them, keep the first, or"
            + " correct the coordinates",
        String.join(", ", rows),
        observations.x(group[0]),
        observations.y(group[0]),
        String.join(", ", values));
  }

  private static Resolved resolved(Observations from, List<int[]> groups, boolean average) {
    int n = from.size();
    boolean[] dropped = new boolean[n];
    int merged = 0;
    for (int[] group : groups) {
      for (int k = 1; k < group.length; k++) {
        dropped[group[k]] = true;
        merged++;
      }
    }
    int[] kept = new int[n - merged];
    int at = 0;
    for (int i = 0; i < n; i++) {
      if (!dropped[i]) {
        kept[at++] = i;
      }
    }
    Observations left = average ? SharedPlaces.averaged(from, groups).rows(kept) : from.rows(kept);
    return new Resolved(left, merged, groups);
  }
}
