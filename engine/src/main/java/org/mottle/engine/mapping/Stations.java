package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.mottle.engine.likelihood.Replicates;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.observation.Duplicates;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.survey.Reading;

/**
 * The readings of a green gathered by station: insertions at one station, within {@value
 * #REPLICATE_M} m of each other, are replicates and count as one value, their mean.
 *
 * @param stations one entry a station, by place: from west to east, then from south to north
 * @param controls readings left out because they watch the drying of a control station over time
 */
public record Stations(List<Station> stations, List<Reading> controls) {

  /** Insertions farther apart than this are different places, m. */
  public static final double REPLICATE_M = 0.5;

  /**
   * @param insertions one or more readings
   * @param x mean place, m
   * @param y mean place, m
   * @param value mean, % by volume
   */
  public record Station(List<Reading> insertions, double x, double y, double value) {

    static Station of(List<Reading> insertions) {
      return new Station(
          List.copyOf(insertions),
          insertions.stream().mapToDouble(Reading::x).average().orElseThrow(),
          insertions.stream().mapToDouble(Reading::y).average().orElseThrow(),
          insertions.stream().mapToDouble(Reading::pct).average().orElseThrow());
    }

    /** Line of the file where the station first stands; 0 when it is from no file. */
    public int row() {
      return insertions.stream().mapToInt(r -> r.label().row()).min().orElseThrow();
    }

    /** When it was first read, in the order of the survey; 0 when not recorded. */
    int sequence() {
      return insertions.stream().mapToInt(r -> r.label().sequence()).min().orElseThrow();
    }

    /** As the surveyor calls it; empty when not recorded. */
    public String name() {
      return insertions.get(0).label().stationId();
    }

    /** Whether the station was chosen for what is seen there, and so biases a plain mean. */
    boolean chosen() {
      return insertions.get(0).role() == Reading.Role.POINT_OF_INTEREST;
    }

    /** What its insertions say of the variance of one; nothing when two people read it. */
    Replicates replicates() {
      long hands =
          insertions.stream()
              .map(r -> r.protocol().operator() + "/" + r.protocol().probe())
              .distinct()
              .count();
      return hands > 1
          ? Replicates.NONE
          : new Replicates(
              insertions.stream().mapToDouble(r -> (r.pct() - value) * (r.pct() - value)).sum(),
              insertions.size() - 1);
    }
  }

  public Stations {
    stations = List.copyOf(stations);
    controls = List.copyOf(controls);
  }

  /** Gathers the readings that are used. The order of the rows does not matter. */
  public static Stations of(List<Reading> readings) {
    List<Reading> inOrder =
        readings.stream()
            .filter(r -> r.quality().used())
            .sorted(
                Comparator.comparingDouble(Reading::x)
                    .thenComparingDouble(Reading::y)
                    .thenComparingDouble(Reading::pct)
                    .thenComparingInt(r -> r.label().row()))
            .toList();
    List<Reading> controls =
        inOrder.stream().filter(r -> r.role() == Reading.Role.CONTROL).toList();
    Map<String, List<List<Reading>>> byName = new LinkedHashMap<>();
    List<List<Reading>> groups = new ArrayList<>();
    for (Reading r : inOrder) {
      if (r.role() == Reading.Role.CONTROL) {
        continue;
      }
      String name = r.label().stationId();
      List<List<Reading>> sameName =
          name.isEmpty() ? List.of() : byName.computeIfAbsent(name, k -> new ArrayList<>());
      List<Reading> group =
          sameName.stream().filter(g -> near(g.get(0), r)).findFirst().orElse(null);
      if (group == null) {
        group = new ArrayList<>();
        groups.add(group);
        if (!name.isEmpty()) {
          sameName.add(group);
        }
      }
      group.add(r);
    }
    return new Stations(groups.stream().map(Station::of).toList(), controls);
  }

  /**
   * Median of the stations' values, % by volume; stations chosen for what is seen there are left
   * out, since they would draw it to them. NaN when there is no other.
   */
  public double medianPct() {
    double[] sorted =
        stations.stream().filter(s -> !s.chosen()).mapToDouble(Station::value).sorted().toArray();
    int n = sorted.length;
    return n == 0 ? Double.NaN : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  /** Without the stations that share a place with one that stands earlier in the file. */
  Stations withFirstOfEachPlace(double tolerance) {
    Set<Integer> later = new HashSet<>();
    Duplicates.Resolved places =
        (Duplicates.Resolved)
            Duplicates.resolve(observations(), tolerance, DuplicatePolicy.AVERAGE);
    for (int[] group : places.groups()) {
      Arrays.stream(group)
          .boxed()
          .sorted(Comparator.comparingInt(i -> stations.get(i).row()))
          .skip(1)
          .forEach(later::add);
    }
    List<Station> first =
        IntStream.range(0, stations.size())
            .filter(i -> !later.contains(i))
            .mapToObj(stations::get)
            .toList();
    return new Stations(first, controls);
  }

  /** What repeated insertions say of the variance of one, % by volume squared. */
  Replicates replicates() {
    return stations.stream().map(Station::replicates).reduce(Replicates.NONE, Replicates::plus);
  }

  Observations observations() {
    return Observations.of(
        stations.stream().mapToDouble(Station::x).toArray(),
        stations.stream().mapToDouble(Station::y).toArray(),
        stations.stream().mapToDouble(Station::value).toArray());
  }

  private static boolean near(Reading a, Reading b) {
    return Math.hypot(a.x() - b.x(), a.y() - b.y()) <= REPLICATE_M;
  }
}
