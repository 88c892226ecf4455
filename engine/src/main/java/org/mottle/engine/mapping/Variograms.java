package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.likelihood.Candidate;
import org.mottle.engine.likelihood.LikelihoodSettings;
import org.mottle.engine.likelihood.RestrictedLikelihood;
import org.mottle.engine.likelihood.VariogramPrior;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/** Which greens and surveys share a variogram, and that variogram. */
final class Variograms {
  private static final int LAGS = 15;

  private final MappingSettings settings;
  private final int threads;
  private final Progress progress;

  Variograms(MappingSettings settings, int threads, Progress progress) {
    this.settings = settings;
    this.threads = threads;
    this.progress = progress;
  }

  /** The variogram of each green, in the order given; greens that share one get the same object. */
  List<MapVariogram> of(List<Prepared> greens) {
    Map<Pool, List<Prepared>> pools = new LinkedHashMap<>();
    for (Prepared green : greens) {
      pools.computeIfAbsent(pool(green), key -> new ArrayList<>()).add(green);
    }
    Map<Pool, MapVariogram> found = new LinkedHashMap<>();
    pools.forEach((pool, members) -> found.put(pool, of(members, pool)));
    return greens.stream().map(green -> found.get(pool(green))).toList();
  }

  /**
   * What greens that share a variogram have in common.
   *
   * @param own whether it is the one green of one survey with readings enough
   * @param green its id; empty where it may be any
   * @param survey likewise
   * @param build of the root zone; empty where it may be any, or is not known
   */
  private record Pool(boolean own, String green, String survey, String build) {}

  private Pool pool(Prepared green) {
    String id = green.subject().green().id();
    String survey = green.subject().surveyId();
    if (green.observations().size() >= settings.needed().ownVariogram()) {
      return new Pool(true, id, survey, "");
    }
    return switch (settings.variogram().pooling()) {
      case GREEN -> new Pool(false, id, "", "");
      case SURVEY -> new Pool(false, "", survey, "");
      case ROOT_ZONE -> new Pool(false, "", "", green.subject().green().rootZone().build());
    };
  }

  private MapVariogram of(List<Prepared> members, Pool pool) {
    List<Prepared> paired = members.stream().filter(Prepared::hasPairs).toList();
    List<Observations> groups = paired.stream().map(Prepared::observations).toList();
    ExperimentalVariogram experimental =
        ExperimentalVariogram.of(
            groups, bins(groups), settings.variogram().estimator(), Direction.ALL, threads);
    return new MapVariogram(
        paired.stream().map(p -> p.subject().surveyId()).distinct().toList(),
        paired.stream().map(p -> p.subject().green().id()).distinct().toList(),
        groups.stream().mapToInt(Observations::size).sum(),
        experimental,
        RestrictedLikelihood.of(
            paired.stream().map(Prepared::sample).toList(),
            likelihood(pool.own()),
            threads,
            progress));
  }

  /** What is assumed of a putting green says nothing of ground that was read a hundred times. */
  private LikelihoodSettings likelihood(boolean own) {
    LikelihoodSettings defaults = LikelihoodSettings.defaults();
    VariogramPrior prior = defaults.prior();
    return new LikelihoodSettings(
        settings.variogram().shape().map(s -> List.of(Candidate.of(s))).orElse(Candidate.DEFAULTS),
        own ? prior.vague() : prior,
        settings.needed().pool(),
        settings.uncertainty().draws());
  }

  /** Half of the longest diagonal: a green is small against the range of its moisture. */
  private LagBins bins(List<Observations> groups) {
    double cutoff = settings.variogram().cutoffM();
    if (Double.isNaN(cutoff)) {
      cutoff = LagBins.defaultsFor(groups).cutoff() * 1.5;
    }
    double lag = settings.variogram().lagM();
    return new LagBins(cutoff, Double.isNaN(lag) ? cutoff / LAGS : lag);
  }
}
