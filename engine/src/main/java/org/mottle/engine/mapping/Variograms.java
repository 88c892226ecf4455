package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.fit.AutomaticFit;
import org.mottle.engine.fit.FitOutcome;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.fit.Parameter;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.fit.StructureSpec;
import org.mottle.engine.fit.WeightedLeastSquares;
import org.mottle.engine.observation.Observations;

/** Which greens share a variogram, and that variogram. */
final class Variograms {
  private static final int LAGS = 15;

  /** Tried in this order; no Gaussian, whose smoothness is seldom a soil's. */
  private static final List<Shape> SHORT_LIST =
      List.of(Shape.SPHERICAL, Shape.EXPONENTIAL, Shape.PENTASPHERICAL, Shape.CIRCULAR);

  private final MappingSettings settings;
  private final int threads;

  Variograms(MappingSettings settings, int threads) {
    this.settings = settings;
    this.threads = threads;
  }

  /** The variogram of each green, in the order given; greens that share one get the same object. */
  List<SurveyVariogram> of(List<Prepared> greens) {
    Map<String, List<Prepared>> pools = new LinkedHashMap<>();
    for (Prepared green : greens) {
      pools.computeIfAbsent(pool(green), key -> new ArrayList<>()).add(green);
    }
    Map<String, SurveyVariogram> found = new LinkedHashMap<>();
    pools.forEach((key, members) -> found.put(key, fit(members)));
    return greens.stream().map(green -> found.get(pool(green))).toList();
  }

  private String pool(Prepared green) {
    GreenSurvey subject = green.subject();
    boolean own =
        settings.variogram().pooling() == Pooling.GREEN
            || green.observations().size() >= settings.needed().ownVariogram();
    if (own) {
      return "green " + subject.surveyId() + " " + subject.green().id();
    }
    return settings.variogram().pooling() == Pooling.ROOT_ZONE
        ? "zone " + subject.surveyId() + " " + subject.green().rootZone().build()
        : "survey " + subject.surveyId();
  }

  private SurveyVariogram fit(List<Prepared> members) {
    List<Prepared> paired = members.stream().filter(Prepared::hasPairs).toList();
    List<Observations> groups = paired.stream().map(Prepared::observations).toList();
    LagBins bins = bins(groups);
    ExperimentalVariogram experimental =
        ExperimentalVariogram.of(
            groups, bins, settings.variogram().estimator(), Direction.ALL, threads);
    return new SurveyVariogram(
        members.get(0).subject().surveyId(),
        paired.stream().map(p -> p.subject().green().id()).toList(),
        groups.stream().mapToInt(Observations::size).sum(),
        experimental,
        outcome(experimental, bins.cutoff()));
  }

  private FitOutcome outcome(ExperimentalVariogram experimental, double cutoff) {
    long pairs = experimental.pairs();
    if (pairs < settings.needed().pairs()) {
      return new NotFitted(
          String.format(
              Locale.ROOT,
              "only %d pairs of readings where a variogram needs %d",
              pairs,
              settings.needed().pairs()));
    }
    double shortest = experimental.lags().get(0).distance();
    List<Shape> shapes = settings.variogram().shape().map(List::of).orElse(SHORT_LIST);
    return new AutomaticFit(
            shapes.stream().map(shape -> candidate(shape, shortest, cutoff)).toList())
        .fit(experimental);
  }

  /**
   * A practical range beyond twice the longest lag is not in the data, and one within twice the
   * shortest is a nugget by another name, which would draw a spot round every reading.
   */
  private WeightedLeastSquares candidate(Shape shape, double shortest, double cutoff) {
    StructureSpec structure = StructureSpec.of(shape);
    if (shape != Shape.POWER && shape != Shape.LINEAR) {
      double kappa = structure.kappa().isFixed() ? structure.kappa().lower() : 0.5;
      double practical = shape.model(1, 1, kappa).practicalRange();
      structure =
          structure.withRange(
              Parameter.between(
                  2 * Math.min(shortest, cutoff) / practical, 2 * cutoff / practical));
    }
    return WeightedLeastSquares.of(structure).withWeighting(settings.variogram().weighting());
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
