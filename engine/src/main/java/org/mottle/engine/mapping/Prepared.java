package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.mapping.Stations.Station;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.observation.Duplicates;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.survey.Refusal;

/**
 * The readings of one green as numbers, with what stands in the way of a map, if anything does.
 *
 * @param subject the green
 * @param stations its readings by station; of those at one place only the first when that is the
 *     policy
 * @param observations one value a station with its position error, without measurement variance
 * @param insertions [n] insertions behind each value
 * @param members [n] which station each value is, the first where several were averaged
 * @param merged stations averaged with, or left out for, another at the same place
 * @param obstacle why these readings cannot carry a map whatever the variogram
 */
record Prepared(
    GreenSurvey subject,
    Stations stations,
    Observations observations,
    int[] insertions,
    int[] members,
    int merged,
    Optional<Refusal> obstacle) {

  /** Readings whose spread across is less than this share of their spread along are on a line. */
  private static final double LINE_SHARE = 0.02;

  static Prepared of(GreenSurvey subject, MappingSettings settings) {
    Stations all = Stations.of(subject.readings());
    // coincidences are refused, where they are, before anything is mapped
    Stations stations =
        settings.duplicates() == DuplicatePolicy.KEEP_FIRST
            ? all.withFirstOfEachPlace(Coincidence.SAME_PLACE_M)
            : all;
    Duplicates.Resolved resolved =
        (Duplicates.Resolved)
            Duplicates.resolve(
                stations
                    .observations()
                    .withPositionError(
                        new StationErrors(settings.positions())
                            .of(stations.stations(), subject.errors().shiftSdM())),
                Coincidence.SAME_PLACE_M,
                DuplicatePolicy.AVERAGE);
    return new Prepared(
        subject,
        stations,
        resolved.observations(),
        insertions(stations.stations(), resolved.groups()),
        members(stations.stations().size(), resolved.groups()),
        all.stations().size() - resolved.observations().size(),
        subject.obstacle().or(() -> obstacle(resolved.observations(), settings.needed().map())));
  }

  /** The insertions of stations that were averaged stand behind the first of them. */
  private static int[] insertions(List<Station> stations, List<int[]> averaged) {
    int[] count = stations.stream().mapToInt(s -> s.insertions().size()).toArray();
    for (int[] group : averaged) {
      for (int i = 1; i < group.length; i++) {
        count[group[0]] += count[group[i]];
        count[group[i]] = 0;
      }
    }
    return Arrays.stream(count).filter(c -> c > 0).toArray();
  }

  /** Stations averaged with one before them have no value of their own. */
  private static int[] members(int stations, List<int[]> averaged) {
    boolean[] gone = new boolean[stations];
    averaged.forEach(group -> Arrays.stream(group).skip(1).forEach(i -> gone[i] = true));
    return IntStream.range(0, stations).filter(i -> !gone[i]).toArray();
  }

  private static Optional<Refusal> obstacle(Observations o, int needed) {
    int n = o.size();
    if (n == 0) {
      return Optional.of(new Refusal("no readings", "read the green, or leave it out"));
    }
    double[] values = o.values();
    if (n > 1 && Arrays.stream(values).allMatch(v -> v == values[0])) {
      return Optional.of(
          new Refusal(
              String.format(Locale.ROOT, "all %d readings equal %s %%", n, shortest(values[0])),
              "check the probe: readings that never change say nothing about the green"));
    }
    if (n < needed) {
      return Optional.of(
          new Refusal(
              n + (n == 1 ? " reading" : " readings") + ": a summary, not a map",
              "a map needs at least " + needed + " places read"));
    }
    return line(o);
  }

  /** Readings on one line make a profile, not a map. */
  private static Optional<Refusal> line(Observations o) {
    double mx = Arrays.stream(o.xs()).average().orElseThrow();
    double my = Arrays.stream(o.ys()).average().orElseThrow();
    double sxx = 0;
    double syy = 0;
    double sxy = 0;
    for (int i = 0; i < o.size(); i++) {
      sxx += (o.x(i) - mx) * (o.x(i) - mx);
      syy += (o.y(i) - my) * (o.y(i) - my);
      sxy += (o.x(i) - mx) * (o.y(i) - my);
    }
    double half = (sxx + syy) / 2;
    double root = Math.hypot((sxx - syy) / 2, sxy);
    double along = Math.sqrt(half + root);
    double across = Math.sqrt(Math.max(0, half - root));
    return across < LINE_SHARE * along
        ? Optional.of(
            new Refusal(
                "the " + o.size() + " readings lie on one line: a profile, not a map",
                "read on both sides of the line"))
        : Optional.empty();
  }

  private static String shortest(double value) {
    return value == Math.rint(value) ? String.format(Locale.ROOT, "%.0f", value) : "" + value;
  }

  /** Of these values alone; the stations stay as they are. */
  Prepared rows(int[] rows) {
    return new Prepared(
        subject,
        stations,
        observations.rows(rows),
        Arrays.stream(rows).map(i -> insertions[i]).toArray(),
        Arrays.stream(rows).map(i -> members[i]).toArray(),
        merged,
        obstacle);
  }

  /**
   * Without the stations chosen for what was seen there: a surface through them would spread what
   * they were chosen for over ground that nobody chose. Whole where too few others are left.
   *
   * @param needed stations that carry a map
   */
  Prepared notChosen(int needed) {
    boolean[] chosen = chosen();
    int[] rows = IntStream.range(0, chosen.length).filter(i -> !chosen[i]).toArray();
    return rows.length == chosen.length || rows.length < needed ? this : rows(rows);
  }

  /** The station of a value. */
  Stations.Station station(int i) {
    return stations.stations().get(members[i]);
  }

  /** [n] whether the value is of a station chosen for what was seen there. */
  boolean[] chosen() {
    boolean[] chosen = new boolean[observations.size()];
    for (int i = 0; i < chosen.length; i++) {
      chosen[i] = station(i).chosen();
    }
    return chosen;
  }

  /** [n] name of the station of each value. */
  List<String> names() {
    return Arrays.stream(members).mapToObj(m -> stations.stations().get(m).name()).toList();
  }

  /** Root mean square of the stations' own position errors, m per axis. */
  double meanJitterM() {
    double sum = 0;
    for (double sd : observations.positionError().jitterSdM()) {
      sum += sd * sd;
    }
    return Math.sqrt(sum / Math.max(1, observations.size()));
  }

  /** As the likelihood of a pooled variogram sees it. */
  Sample sample() {
    return new Sample(
        subject.green().id(), subject.surveyId(), observations, insertions, stations.replicates());
  }

  /** Whether its pairs can enter a variogram. */
  boolean hasPairs() {
    return subject.obstacle().isEmpty()
        && observations.size() >= 2
        && Arrays.stream(observations.values()).distinct().count() > 1;
  }
}
