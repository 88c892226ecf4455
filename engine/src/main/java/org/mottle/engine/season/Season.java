package org.mottle.engine.season;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.mottle.engine.check.Check;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.VariogramModel;

/**
 * Several surveys of the same greens, ready to be compared in pairs. Immutable, shared by threads;
 * one thread or many, the same numbers.
 */
public final class Season {
  /** Draws of the variogram and of the share that persists that a change is averaged over. */
  private static final int DRAWS = 8;

  /** Draws under which the share that persists is looked for. */
  private static final int SHARE_DRAWS = 4;

  private final MappingSettings settings;
  private final Map<String, List<VisitedGreen>> greens;
  private final PersistentShare share;
  private final Map<VariogramModel, Blurred> blurred;

  private Season(
      MappingSettings settings,
      Map<String, List<VisitedGreen>> greens,
      PersistentShare share,
      Map<VariogramModel, Blurred> blurred) {
    this.settings = settings;
    this.greens = greens;
    this.share = share;
    this.blurred = blurred;
  }

  /**
   * @param map of all surveys together, so that they share a variogram
   * @param conditions of the visits, as far as recorded
   */
  public static Season of(
      SurveyMap map, List<Conditions> conditions, int threads, Progress progress) {
    List<Outcome.Mapped> kriged =
        map.maps().stream()
            .filter(m -> m.basis().variogram().flatMap(v -> v.pooled()).isPresent())
            .toList();
    VisitedGreen[] visited = new VisitedGreen[kriged.size()];
    Map<String, OffsetDateTime> starts = starts(conditions);
    Panels.run(
        visited.length,
        1,
        threads,
        "models of the surveys",
        progress,
        () ->
            (from, to) -> {
              for (int k = from; k < to; k++) {
                visited[k] = visited(kriged.get(k), map.settings(), conditions, starts);
              }
            });
    Map<String, List<VisitedGreen>> greens = new LinkedHashMap<>();
    for (VisitedGreen v : visited) {
      greens.computeIfAbsent(v.greenId(), g -> new ArrayList<>()).add(v);
    }
    greens.replaceAll((g, list) -> inOrder(list));
    Map<VariogramModel, Blurred> blurred = new ConcurrentHashMap<>();
    return new Season(map.settings(), greens, share(greens, blurred, threads, progress), blurred);
  }

  private static Map<String, OffsetDateTime> starts(List<Conditions> conditions) {
    Map<String, OffsetDateTime> starts = new LinkedHashMap<>();
    for (Conditions c : conditions) {
      VisitedGreen.parsed(c.visit().start())
          .ifPresent(t -> starts.merge(c.surveyId(), t, (a, b) -> b.isBefore(a) ? b : a));
    }
    return starts;
  }

  private static VisitedGreen visited(
      Outcome.Mapped map,
      MappingSettings settings,
      List<Conditions> conditions,
      Map<String, OffsetDateTime> starts) {
    String survey = map.subject().surveyId();
    String green = map.subject().green().id();
    GreenReadings readings = GreenReadings.of(map, settings);
    PooledVariogram pooled = map.basis().variogram().orElseThrow().pooled().orElseThrow();
    List<NestedModel> all = pooled.draws(readings.sample());
    return new VisitedGreen(
        map,
        readings,
        conditions.stream()
            .filter(c -> c.isOf(survey, green))
            .min(Comparator.comparing(c -> c.greenId().isEmpty())),
        Optional.ofNullable(starts.get(survey)),
        spread(all, DRAWS));
  }

  /** The middles of equal stretches. */
  private static <T> List<T> spread(List<T> all, int most) {
    int n = Math.min(most, all.size());
    List<T> some = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      some.add(all.get((int) ((k + 0.5) * all.size() / n)));
    }
    return some;
  }

  /** By time where all have one, else as they came. */
  private static List<VisitedGreen> inOrder(List<VisitedGreen> visits) {
    return visits.stream().allMatch(v -> v.time().isPresent())
        ? visits.stream().sorted(Comparator.comparing(v -> v.time().orElseThrow())).toList()
        : List.copyOf(visits);
  }

  private static PersistentShare share(
      Map<String, List<VisitedGreen>> greens,
      Map<VariogramModel, Blurred> blurred,
      int threads,
      Progress progress) {
    List<RepeatedGreen> repeated = new ArrayList<>();
    List<List<Blurred>> tables = new ArrayList<>();
    for (List<VisitedGreen> visits : greens.values()) {
      List<VisitedGreen> alike =
          visits.stream().filter(v -> v.variogram() == visits.get(0).variogram()).toList();
      if (alike.size() > 1) {
        List<JointModel> models = spread(joint(alike, PersistentShare.prior()), SHARE_DRAWS);
        repeated.add(
            new RepeatedGreen(VisitedGreen.together(alike, VisitedGreen::screened), models));
        tables.add(tables(models, blurred));
      }
    }
    int draws = repeated.stream().mapToInt(r -> r.models().size()).min().orElse(0);
    return PersistentShare.of(
        repeated.stream()
            .map(r -> new RepeatedGreen(r.surveys(), r.models().subList(0, draws)))
            .toList(),
        tables,
        threads,
        progress);
  }

  private static List<Blurred> tables(
      List<JointModel> models, Map<VariogramModel, Blurred> blurred) {
    return models.stream()
        .map(m -> blurred.computeIfAbsent(m.correlation(), Blurred::new))
        .toList();
  }

  /** Models of visits together: correlation and nugget of the variogram of most stations. */
  private static List<JointModel> joint(List<VisitedGreen> visits, PersistentShare share) {
    VisitedGreen leading =
        visits.stream()
            .reduce((a, b) -> b.variogram().stations() > a.variogram().stations() ? b : a)
            .orElseThrow();
    int n = visits.stream().mapToInt(v -> v.models().size()).min().orElseThrow();
    double[] shares = share.draws(n);
    List<JointModel> models = new ArrayList<>();
    for (int d = 0; d < n; d++) {
      int draw = d;
      VariogramModel structure = leading.models().get(d).structures().get(0).model();
      models.add(
          new JointModel(
              structure.with(1, structure.range()),
              leading.models().get(d).nugget(),
              visits.stream()
                  .mapToDouble(v -> v.models().get(draw).structures().get(0).model().partialSill())
                  .toArray(),
              shares[d]));
    }
    return models;
  }

  /** How much of a pattern persists from survey to survey. */
  public PersistentShare share() {
    return share;
  }

  /** Greens with a kriged map, in the order of the map. */
  public List<String> greens() {
    return List.copyOf(greens.keySet());
  }

  /** Surveys of a green with a kriged map, in the order of time. */
  public List<String> surveys(String greenId) {
    return greens.getOrDefault(greenId, List.of()).stream().map(VisitedGreen::surveyId).toList();
  }

  /**
   * What changed on a green from one survey to another.
   *
   * @param limitPct a change that matters, % by volume; 2 is usual
   */
  public Answer<Change> change(
      String greenId,
      String before,
      String after,
      double limitPct,
      int threads,
      Progress progress) {
    Check.above("change that matters", limitPct, 0, "% by volume");
    if (before.equals(after)) {
      throw new IllegalArgumentException("a survey is not compared with itself, was " + before);
    }
    Optional<VisitedGreen> first = visit(greenId, before);
    Optional<VisitedGreen> second = visit(greenId, after);
    if (first.isEmpty() || second.isEmpty()) {
      return Answer.refused(
          String.format(
              Locale.ROOT,
              "green %s has no kriged map in %s",
              greenId,
              first.isEmpty() ? before : after),
          "a change needs both surveys mapped with a variogram");
    }
    Comparability comparability =
        new Comparability(first.get(), second.get(), settings.uncertainty().operatorSdPct());
    Optional<Refusal> refusal = comparability.refusal();
    if (refusal.isPresent()) {
      return Answer.refused(refusal.get());
    }
    List<JointModel> models = joint(List.of(first.get(), second.get()), share);
    List<SeenSurvey> seen =
        VisitedGreen.together(List.of(first.get(), second.get()), VisitedGreen::seen);
    Answer<JointPair> pair =
        JointPair.of(seen.get(0), seen.get(1), models, tables(models, blurred));
    if (pair.refusal().isPresent()) {
      return Answer.refused(pair.refusal().get());
    }
    return Answer.of(
        Change.of(
            first.get(),
            second.get(),
            pair.value().orElseThrow(),
            Stream.concat(comparability.remarks().stream(), Stream.of(share.words())).toList(),
            limitPct,
            threads,
            progress));
  }

  /** How fast the ground dried over a change without water between its surveys. */
  public Answer<DryDown> dryDown(Change change, int threads, Progress progress) {
    return DryDown.of(change, settings.watering(), threads, progress);
  }

  private Optional<VisitedGreen> visit(String greenId, String surveyId) {
    return greens.getOrDefault(greenId, List.of()).stream()
        .filter(v -> v.surveyId().equals(surveyId))
        .findFirst();
  }
}
