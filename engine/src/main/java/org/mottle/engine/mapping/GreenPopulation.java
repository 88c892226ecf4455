package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.population.CannotTell;
import org.mottle.engine.population.Finding;
import org.mottle.engine.population.LowProbability;
import org.mottle.engine.population.PopulationOutcome;
import org.mottle.engine.population.PositionError;
import org.mottle.engine.population.SpotPattern;
import org.mottle.engine.population.StationValues;
import org.mottle.engine.population.TwoFound;
import org.mottle.engine.population.TwoPopulations;

/**
 * Whether the stations of a green come from one population or two, over all its surveys.
 *
 * @param finding in words
 * @param found the two populations, where they are to be mapped apart
 * @param survey which of the surveys tested this is
 */
record GreenPopulation(Finding finding, Optional<TwoFound> found, int survey) {

  /** One a prepared green, in the order given; empty where a green was not tested. */
  static List<Optional<GreenPopulation>> of(List<Prepared> greens, long seed) {
    Map<String, List<Prepared>> byGreen = new LinkedHashMap<>();
    for (Prepared green : greens) {
      if (green.obstacle().isEmpty()) {
        byGreen.computeIfAbsent(green.subject().green().id(), id -> new ArrayList<>()).add(green);
      }
    }
    Map<Prepared, GreenPopulation> found = new LinkedHashMap<>();
    byGreen.values().forEach(surveys -> test(surveys, seed, found));
    return greens.stream().map(g -> Optional.ofNullable(found.get(g))).toList();
  }

  private static void test(
      List<Prepared> surveys, long seed, Map<Prepared, GreenPopulation> found) {
    PopulationOutcome outcome =
        TwoPopulations.test(surveys.stream().map(GreenPopulation::values).toList());
    Finding finding;
    Optional<TwoFound> apart = Optional.empty();
    if (outcome instanceof TwoFound two) {
      finding = Finding.of(two, SpotPattern.of(two, seed));
      apart =
          finding.advice() == Finding.Advice.MAP_APART_AND_TEST
              ? Optional.of(two)
              : Optional.empty();
    } else {
      finding = Finding.of((CannotTell) outcome);
    }
    for (int s = 0; s < surveys.size(); s++) {
      found.put(surveys.get(s), new GreenPopulation(finding, apart, s));
    }
  }

  private static StationValues values(Prepared green) {
    var o = green.observations();
    return StationValues.of(green.subject().surveyId(), o.values(), o.xs(), o.ys(), green.chosen())
        .withNames(green.names())
        .withPositionError(new PositionError(green.meanJitterM(), o.positionError().shiftSdM()));
  }

  /** Stations of the main population, by their index; all where there is one population. */
  int[] main(int stations) {
    return found
        .map(two -> two.otherStations(survey))
        .orElseGet(() -> java.util.stream.IntStream.range(0, stations).toArray());
  }

  /** Stations of the low population where it is mapped apart, by their index. */
  List<Outcome.Low> lowStations(Prepared green) {
    return found
        .map(
            two ->
                Arrays.stream(two.lowStations(survey))
                    .mapToObj(i -> new Outcome.Low(green.members()[i], two.membership(survey, i)))
                    .toList())
        .orElse(List.of());
  }

  Optional<LowProbability> low() {
    return found.map(two -> LowProbability.of(two, survey));
  }
}
