package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.progress.Progress;

/**
 * Pools green-surveys into one variogram by restricted maximum likelihood (Patterson & Thompson
 * 1971; Kitanidis 1983, Water Resources Research 19, 909-921; Diggle & Ribeiro 2007, ch. 5). The
 * contrasts of sample g, free of its own mean and of a plane, have variance
 *
 * <pre>c_g K R(a) Kᵀ + c0 K D Kᵀ</pre>
 *
 * with R the correlations at practical range a, blurred by the position errors, D = 1 / insertions,
 * a nugget c0 and a range common to all, and a sill c_g log-normal about that of the sample's
 * survey ({@link SillSpread}). The nugget is common as a variance, not as a share: most of it is
 * the probe's, which reads no worse on an uneven green. Intervals are by {@link Profile}; repeated
 * surveys of the same greens are discounted by {@link DesignEffect}.
 *
 * <p>Cost: one eigendecomposition a sample, shape and range. Computed on a grid, so there is no
 * start to choose and no local optimum to end in.
 */
public final class RestrictedLikelihood {
  private RestrictedLikelihood() {}

  /**
   * @param samples greens of one kind in all their surveys
   * @param threads at least 1; the result does not depend on it
   */
  public static PooledOutcome of(
      List<Sample> samples, LikelihoodSettings settings, int threads, Progress progress) {
    Screening screened = Screening.of(samples);
    if (screened.samples().isEmpty()) {
      return new NotPooled(
          "no green has readings that differ at enough places for a variogram",
          "read more places on each green");
    }
    List<Sample> pool = screened.samples();
    int contrasts = pool.stream().mapToInt(Contrasts::count).sum();
    double variance =
        pool.stream().mapToDouble(s -> Contrasts.of(s).sumOfSquares()).sum() / contrasts;
    Replicates replicates =
        samples.stream().map(Sample::replicates).reduce(Replicates.NONE, Replicates::plus);
    double[] effect = effect(pool, settings, replicates, variance);
    PoolSurface surface =
        PoolSurface.of(
            pool, settings.candidates(), Axes.of(pool, variance), effect, threads, progress);
    int stations = pool.stream().mapToInt(Sample::size).sum();
    boolean borrowed = stations / meanEffect(pool, effect) < settings.fewest();
    Posterior posterior = new Posterior(surface, settings, replicates, borrowed);
    List<PooledVariogram.Score> scores =
        scores(
            posterior,
            settings.candidates(),
            surface.surveys().size(),
            surface.forms().size() / settings.candidates().size(),
            contrasts);
    int best = best(scores);
    PooledVariogram.Parameters parameters = parameters(posterior, surface, best);
    PooledVariogram.Evidence evidence =
        new PooledVariogram.Evidence(
            pool.size(),
            stations,
            ClosePairs.count(
                pool, settings.candidates().get(best), parameters.practicalRange().best()),
            replicates,
            meanEffect(pool, effect),
            aicc(surface.unstructured(replicates), 1 + surface.surveys().size(), contrasts)
                - scores.get(best).aicc(),
            borrowed);
    double[] weight = scores.stream().mapToDouble(PooledVariogram.Score::weight).toArray();
    List<String> notes = new ArrayList<>(screened.notes());
    notes.addAll(notes(evidence, settings));
    return new PooledVariogram(
        scores,
        best,
        parameters,
        evidence,
        notes,
        new Draws(SharedDraw.of(posterior, surface, weight, settings.draws()), surface));
  }

  /**
   * By the variance of an insertion, where there are enough, or the usual share of the nugget, and
   * the usual range: the effect need not wait for the fit.
   */
  private static double[] effect(
      List<Sample> pool, LikelihoodSettings settings, Replicates replicates, double variance) {
    double nugget =
        replicates.enough() ? replicates.variance() / variance : settings.prior().nuggetShare();
    return DesignEffect.of(pool)
        .at(1 - nugget, settings.candidates().get(0).model(1, settings.prior().rangeM()));
  }

  /** Contrasts of the pool over what they are worth. */
  private static double meanEffect(List<Sample> pool, double[] effect) {
    double all = 0;
    double worth = 0;
    for (int i = 0; i < effect.length; i++) {
      all += Contrasts.count(pool.get(i));
      worth += Contrasts.count(pool.get(i)) / effect[i];
    }
    return all / worth;
  }

  /** Each candidate by the best of its forms. */
  private static List<PooledVariogram.Score> scores(
      Posterior posterior, List<Candidate> candidates, int surveys, int forms, int contrasts) {
    int n = candidates.size();
    double[] likelihood = new double[n];
    double[] aicc = new double[n];
    double least = Double.POSITIVE_INFINITY;
    for (int c = 0; c < n; c++) {
      likelihood[c] =
          IntStream.range(c * forms, (c + 1) * forms)
              .mapToDouble(posterior::logLikelihood)
              .max()
              .orElseThrow();
      aicc[c] = aicc(likelihood[c], 3 + surveys, contrasts);
      least = Math.min(least, aicc[c]);
    }
    double sum = 0;
    for (double a : aicc) {
      sum += Math.exp(-(a - least) / 2);
    }
    List<PooledVariogram.Score> scores = new ArrayList<>();
    for (int c = 0; c < n; c++) {
      scores.add(
          new PooledVariogram.Score(
              candidates.get(c), likelihood[c], aicc[c], Math.exp(-(aicc[c] - least) / 2) / sum));
    }
    return scores;
  }

  /**
   * Without structure there is one variance a survey and its spread over the greens; with it, a
   * range and a nugget besides.
   */
  private static double aicc(double logLikelihood, int parameters, int contrasts) {
    double room = Math.max(1, contrasts - parameters - 1);
    return -2 * logLikelihood + 2 * parameters + 2.0 * parameters * (parameters + 1) / room;
  }

  private static int best(List<PooledVariogram.Score> scores) {
    int best = 0;
    for (int c = 1; c < scores.size(); c++) {
      best = scores.get(c).aicc() < scores.get(best).aicc() ? c : best;
    }
    return best;
  }

  /**
   * Best values of the best candidate; intervals over all candidates and spreads, so that what the
   * readings do not tell of these is in them.
   */
  private static PooledVariogram.Parameters parameters(
      Posterior posterior, PoolSurface surface, int best) {
    Axes axes = surface.axes();
    SortedMap<String, Interval> sills = new TreeMap<>();
    for (int s = 0; s < surface.surveys().size(); s++) {
      int survey = s;
      sills.put(
          surface.surveys().get(s),
          interval(axes.sill(), posterior, best, f -> posterior.ofSill(f, survey)));
    }
    return new PooledVariogram.Parameters(
        interval(axes.range(), posterior, best, posterior::ofRange),
        interval(axes.nugget(), posterior, best, posterior::ofNugget),
        posterior.nuggetShare(best, Profile.DROP),
        sills);
  }

  private static Interval interval(
      double[] axis, Posterior posterior, int best, IntFunction<double[]> profile) {
    int forms = posterior.formsOfCandidate();
    Interval all = Profile.interval(axis, highest(profile, 0, posterior.forms()));
    Interval own = Profile.interval(axis, highest(profile, best * forms, (best + 1) * forms));
    double value = Math.max(all.low(), Math.min(own.best(), all.high()));
    return new Interval(all.low(), value, all.high());
  }

  /** At each node the highest of the profiles of forms [from, to). */
  private static double[] highest(IntFunction<double[]> profile, int from, int to) {
    double[] highest = profile.apply(from);
    for (int f = from + 1; f < to; f++) {
      double[] other = profile.apply(f);
      for (int i = 0; i < highest.length; i++) {
        highest[i] = Math.max(highest[i], other[i]);
      }
    }
    return highest;
  }

  private static String worth(PooledVariogram.Evidence evidence) {
    double worth = evidence.stations() / evidence.designEffect();
    return worth > evidence.stations() - 1
        ? ""
        : String.format(Locale.ROOT, " of greens read again, worth %.0f,", worth);
  }

  private static List<String> notes(
      PooledVariogram.Evidence evidence, LikelihoodSettings settings) {
    List<String> notes = new ArrayList<>();
    if (evidence.borrowed()) {
      notes.add(
          String.format(
              Locale.ROOT,
              "borrowed variogram: %d stations%s where %d are needed, so an assumed range and nugget"
                  + " enter",
              evidence.stations(),
              worth(evidence),
              settings.fewest()));
    }
    if (!evidence.nuggetKnown()) {
      notes.add(
          String.format(
              Locale.ROOT,
              "the nugget cannot be known: %d close pairs and %d repeated insertions; read two"
                  + " pairs of stations half a metre apart on each green",
              evidence.closePairs(),
              evidence.replicates().degrees()));
    }
    return notes;
  }
}
