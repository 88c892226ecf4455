package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.WaterHistory;

/**
 * Which head to look at, from the moisture of a green: for every green, survey and head of the
 * green what the readings say ({@link SectorTest}) and, the surveys beside each other, what that is
 * consistent with ({@link GreenHistory}). Immutable.
 */
public final class HeadEvidence {
  /** Views of the covariance that are integrated over. */
  private static final int VIEWS = 9;

  /** Surveys beside the one that is asked; more would add little and cost much. */
  private static final int MOST_BESIDE = 4;

  private final SectorPrior prior;
  private final SurveyMap map;
  private final List<Head> heads;
  private final List<Conditions> conditions;

  private HeadEvidence(
      SectorPrior prior, SurveyMap map, List<Head> heads, List<Conditions> conditions) {
    this.prior = prior;
    this.map = map;
    this.heads = List.copyOf(heads);
    this.conditions = List.copyOf(conditions);
  }

  /**
   * @param map of one or more surveys, older first
   * @param heads of the site
   * @param conditions of the surveys; what is not recorded cannot be told
   * @param threads at least 1; the findings do not depend on it
   * @return one a green, survey and head of the green, in the order of the map's outcomes, then of
   *     the heads
   */
  public static List<HeadFinding> of(
      SurveyMap map,
      List<Head> heads,
      List<Conditions> conditions,
      SectorPrior prior,
      int threads,
      Progress progress) {
    return new HeadEvidence(prior, map, heads, conditions).findings(threads, progress);
  }

  private List<HeadFinding> findings(int threads, Progress progress) {
    List<Outcome> outcomes = map.outcomes();
    List<WaterHistory> history = histories();
    SectorEvidence[] found = sectors(history, threads, progress);
    Map<String, List<Integer>> byGreen = new LinkedHashMap<>();
    for (int i = 0; i < found.length; i++) {
      byGreen.computeIfAbsent(green(i), k -> new ArrayList<>()).add(i);
    }
    List<List<HeadFinding>> inOrder = new ArrayList<>();
    outcomes.forEach(o -> inOrder.add(List.of()));
    byGreen.forEach(
        (green, members) -> {
          List<Head> own = of(green);
          List<WaterHistory> ofGreen = members.stream().map(history::get).toList();
          GreenHistory causes =
              new GreenHistory(
                  prior,
                  ofGreen,
                  members.stream().map(i -> Optional.ofNullable(found[i])).toList(),
                  own.size());
          for (int s = 0; s < members.size(); s++) {
            inOrder.set(
                members.get(s),
                new HeadWords(outcomes.get(members.get(s)), s, causes).findings(own));
          }
        });
    return inOrder.stream().flatMap(List::stream).toList();
  }

  private List<WaterHistory> histories() {
    return map.outcomes().stream().map(this::history).toList();
  }

  /** Of each outcome; null where it cannot be tested. */
  private SectorEvidence[] sectors(List<WaterHistory> history, int threads, Progress progress) {
    SectorEvidence[] found = new SectorEvidence[history.size()];
    Panels.run(
        found.length,
        1,
        threads,
        "heads",
        progress,
        () ->
            (from, to) -> {
              for (int i = from; i < to; i++) {
                found[i] = evidence(i, history).orElse(null);
              }
            });
    return found;
  }

  private String green(int outcome) {
    return map.outcomes().get(outcome).subject().green().id();
  }

  private List<Head> of(String green) {
    return heads.stream().filter(h -> h.greenId().equals(green)).toList();
  }

  private WaterHistory history(Outcome outcome) {
    String survey = outcome.subject().surveyId();
    String green = outcome.subject().green().id();
    return conditions.stream()
        .filter(c -> c.isOf(survey, green))
        // what is recorded of the green goes before what is recorded of the survey
        .min((a, b) -> Boolean.compare(a.greenId().isEmpty(), b.greenId().isEmpty()))
        .map(c -> WaterHistory.of(c.water()))
        .orElse(WaterHistory.UNKNOWN);
  }

  private Optional<SectorEvidence> evidence(int outcome, List<WaterHistory> history) {
    List<Head> own = of(green(outcome));
    Optional<MapVariogram> variogram = variogram(outcome);
    if (own.isEmpty() || variogram.isEmpty()) {
      return Optional.empty();
    }
    List<Integer> seen = new ArrayList<>(List.of(outcome));
    seen.addAll(beside(outcome, variogram.get(), history));
    SectorPattern pattern = new SectorPattern(heads);
    List<SectorSurvey> surveys =
        seen.stream()
            .map(i -> (Outcome.Mapped) map.outcomes().get(i))
            .map(
                m ->
                    SectorSurvey.of(
                        GreenReadings.of(m, map.settings()),
                        m.subject().green().outline(),
                        pattern,
                        own))
            .toList();
    return new SectorTest(prior, surveys)
        .under(
            variogram
                .get()
                .pooled()
                .orElseThrow()
                .othersOf(surveys.stream().map(SectorSurvey::sample).toList(), VIEWS));
  }

  /** Surveys of the same green after rain and in dry days, the nearest in order. */
  private List<Integer> beside(int outcome, MapVariogram variogram, List<WaterHistory> history) {
    return IntStream.range(0, history.size())
        .filter(i -> i != outcome && green(i).equals(green(outcome)))
        .filter(
            i -> history.get(i) == WaterHistory.AFTER_RAIN || history.get(i) == WaterHistory.DRYING)
        .filter(i -> variogram(i).filter(v -> v == variogram).isPresent())
        .boxed()
        .sorted(Comparator.comparingInt(i -> Math.abs(i - outcome)))
        .limit(MOST_BESIDE)
        .sorted()
        .toList();
  }

  /** Behind the map of an outcome, where there is one. */
  private Optional<MapVariogram> variogram(int outcome) {
    return map.outcomes().get(outcome) instanceof Outcome.Mapped m
        ? m.basis().variogram().filter(v -> v.pooled().isPresent())
        : Optional.empty();
  }
}
