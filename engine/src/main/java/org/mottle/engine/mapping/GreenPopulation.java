package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.observation.Observations;
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

  /**
   * The lower of two populations in one survey.
   *
   * @param place probability that a place belongs to it
   * @param mean % by volume
   * @param sd within it, % by volume
   */
  record Low(LowProbability place, double mean, double sd) {

    /** At the centres needed. */
    double[] probability(GreenCells cells) {
      double[] x = cells.neededX();
      double[] y = cells.neededY();
      double[] low = new double[x.length];
      Arrays.setAll(low, i -> place.at(x[i], y[i]));
      return low;
    }

    /**
     * Probability of both populations together to be below a limit.
     *
     * @param low of belonging to the lower
     * @param main of the other to be below it
     */
    double[] below(double limit, double[] low, double[] main) {
      double[] both = new double[main.length];
      Arrays.setAll(both, i -> LowProbability.dry(low[i], main[i], mean, sd, limit));
      return both;
    }

    /** The same of being above it. */
    double[] above(double limit, double[] low, double[] main) {
      double[] both = new double[main.length];
      Arrays.setAll(both, i -> 1 - LowProbability.dry(low[i], 1 - main[i], mean, sd, limit));
      return both;
    }
  }

  /** One a prepared green, in the order given; empty where a green was not tested. */
  static List<Optional<GreenPopulation>> of(List<Prepared> greens, long seed) {
    Map<String, List<Integer>> byGreen = new LinkedHashMap<>();
    for (int i = 0; i < greens.size(); i++) {
      if (greens.get(i).obstacle().isEmpty()) {
        String id = greens.get(i).subject().green().id();
        byGreen.computeIfAbsent(id, k -> new ArrayList<>()).add(i);
      }
    }
    List<Optional<GreenPopulation>> tested =
        new ArrayList<>(Collections.nCopies(greens.size(), Optional.empty()));
    for (List<Integer> surveys : byGreen.values()) {
      GreenPopulation green = test(surveys.stream().map(greens::get).toList(), seed);
      for (int s = 0; s < surveys.size(); s++) {
        tested.set(surveys.get(s), Optional.of(new GreenPopulation(green.finding, green.found, s)));
      }
    }
    return tested;
  }

  private static GreenPopulation test(List<Prepared> surveys, long seed) {
    PopulationOutcome outcome =
        TwoPopulations.test(surveys.stream().map(GreenPopulation::values).toList());
    if (outcome instanceof TwoFound two) {
      Finding finding = Finding.of(two, SpotPattern.of(two, seed));
      boolean apart = finding.advice() == Finding.Advice.MAP_APART_AND_TEST;
      return new GreenPopulation(finding, Optional.of(two).filter(t -> apart), 0);
    }
    return new GreenPopulation(Finding.of((CannotTell) outcome), Optional.empty(), 0);
  }

  private static StationValues values(Prepared green) {
    Observations o = green.observations();
    return StationValues.of(green.subject().surveyId(), o.values(), o.xs(), o.ys(), green.chosen())
        .withNames(green.names())
        .withPositionError(new PositionError(green.meanJitterM(), o.positionError().shiftSdM()));
  }

  /** The values of the main population; all where there is one. */
  private Prepared main(Prepared green) {
    return found.map(two -> green.rows(two.otherStations(survey))).orElse(green);
  }

  /**
   * The values that a surface goes through: of the main population, and not chosen for what was
   * seen there.
   *
   * @param needed stations that carry a map
   */
  static Prepared surface(Optional<GreenPopulation> population, Prepared green, int needed) {
    return population.map(p -> p.main(green)).orElse(green).notChosen(needed);
  }

  /** Stations of the lower population where it is mapped apart. */
  List<Outcome.Low> lowStations(Prepared green) {
    return found.stream()
        .flatMap(
            two ->
                Arrays.stream(two.lowStations(survey))
                    .mapToObj(i -> new Outcome.Low(green.members()[i], two.membership(survey, i))))
        .toList();
  }

  /** The lower population, where it is to be mapped apart. */
  Optional<Low> low() {
    return found.map(
        two ->
            new Low(
                LowProbability.of(two, survey),
                two.mixture().lowerMean(survey),
                two.mixture().sigma()));
  }
}
