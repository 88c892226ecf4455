package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.observation.Observations;
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
    List<Optional<SectorEvidence>> evidence = new ArrayList<>();
    SectorEvidence[] found = new SectorEvidence[outcomes.size()];
    Panels.run(
        found.length,
        1,
        threads,
        "heads",
        progress,
        () ->
            (from, to) -> {
              for (int i = from; i < to; i++) {
                found[i] = evidence(outcomes.get(i)).orElse(null);
              }
            });
    Arrays.stream(found).map(Optional::ofNullable).forEach(evidence::add);
    Map<String, List<Integer>> byGreen = new LinkedHashMap<>();
    for (int i = 0; i < outcomes.size(); i++) {
      byGreen
          .computeIfAbsent(outcomes.get(i).subject().green().id(), k -> new ArrayList<>())
          .add(i);
    }
    List<List<HeadFinding>> inOrder = new ArrayList<>();
    outcomes.forEach(o -> inOrder.add(List.of()));
    byGreen.forEach(
        (green, members) -> {
          List<Head> own = of(green);
          List<WaterHistory> history = members.stream().map(i -> history(outcomes.get(i))).toList();
          GreenHistory causes =
              new GreenHistory(
                  prior, history, members.stream().map(evidence::get).toList(), own.size());
          for (int s = 0; s < members.size(); s++) {
            inOrder.set(
                members.get(s),
                new HeadWords(outcomes.get(members.get(s)), history, s, causes).findings(own));
          }
        });
    return inOrder.stream().flatMap(List::stream).toList();
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

  private Optional<SectorEvidence> evidence(Outcome outcome) {
    List<Head> own = of(outcome.subject().green().id());
    if (own.isEmpty() || !(outcome instanceof Outcome.Mapped mapped)) {
      return Optional.empty();
    }
    Optional<PooledVariogram> pooled = mapped.basis().variogram().flatMap(v -> v.pooled());
    return pooled.map(p -> test(mapped, own, p, map.settings()));
  }

  private SectorEvidence test(
      Outcome.Mapped mapped, List<Head> own, PooledVariogram pooled, MappingSettings settings) {
    GreenReadings readings = GreenReadings.of(mapped, settings);
    Observations o = readings.observations();
    SectorPattern pattern = new SectorPattern(heads);
    return new SectorTest(
            prior,
            o,
            readings.insertions(),
            inside(o, mapped.subject().green().outline()),
            own.stream().map(h -> pattern.shares(h, o.xs(), o.ys())).toList())
        .under(pooled.othersOf(readings.sample()));
  }

  /** How far inside the outline each station stands, m; 0 outside. */
  private static double[] inside(Observations o, Geometry outline) {
    Geometry edge = outline.getBoundary();
    GeometryFactory factory = outline.getFactory();
    return IntStream.range(0, o.size())
        .mapToObj(i -> factory.createPoint(new Coordinate(o.x(i), o.y(i))))
        .mapToDouble(p -> outline.covers(p) ? edge.distance(p) : 0)
        .toArray();
  }
}
