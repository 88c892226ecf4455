package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.fit.AutomaticFit;
import org.mottle.engine.fit.Parameter;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.fit.StructureSpec;
import org.mottle.engine.fit.WeightedLeastSquares;
import org.mottle.engine.fit.Weighting;
import org.mottle.engine.mapping.Stations.Station;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * Kriging of the local mean with a variogram fitted by weighted least squares to the pairs of one
 * green in one survey, or of all greens of a survey: the usual practice, which trusts positions and
 * takes the fitted variogram for the true one. Cressie-Hawkins semivariances up to half of the
 * diagonal in 15 lags, weights the pairs, practical range between twice the shortest and twice the
 * longest lag, the best of four shapes. Where none is found, or nearly all of it is nugget, a
 * borrowed one stands in, so that no method is spared its hard greens: spherical, range 12 m, 35 %
 * nugget, sill the variance of the green's station values.
 *
 * @param name for the tables
 * @param own whether each green has its own
 */
record FittedVariogram(String name, boolean own) implements Method {
  private static final int LAGS = 15;
  private static final double ALL_NUGGET = 0.95;
  private static final double BORROWED_RANGE_M = 12;
  private static final double BORROWED_NUGGET_SHARE = 0.35;
  private static final double LEAST_VARIANCE = 0.01;
  private static final List<Shape> SHAPES =
      List.of(Shape.SPHERICAL, Shape.EXPONENTIAL, Shape.PENTASPHERICAL, Shape.CIRCULAR);

  @Override
  public Mapping map(List<GreenCase> course) {
    Map<String, List<GreenCase>> pools = new LinkedHashMap<>();
    for (GreenCase green : course) {
      String survey = green.subject().surveyId();
      pools
          .computeIfAbsent(
              own ? survey + "/" + green.subject().green().id() : survey, k -> new ArrayList<>())
          .add(green);
    }
    Map<GreenCase, MappedGreen> maps = new LinkedHashMap<>();
    List<VariogramClaim> claims = new ArrayList<>();
    for (List<GreenCase> pool : pools.values()) {
      Optional<NestedModel> model = fitted(pool);
      model.ifPresent(
          m ->
              claims.add(
                  new VariogramClaim(
                      pool.get(0).known().pool(),
                      m.structures().get(0).model().practicalRange(),
                      m.nugget(),
                      Optional.empty(),
                      Optional.empty())));
      pool.forEach(green -> maps.put(green, map(green, model)));
    }
    return new Mapping(course.stream().map(maps::get).toList(), claims);
  }

  /** With the borrowed variogram. */
  static MappedGreen borrowed(GreenCase green) {
    return map(green, Optional.empty());
  }

  private static MappedGreen map(GreenCase green, Optional<NestedModel> model) {
    double[] values = green.stations().stream().mapToDouble(Station::value).toArray();
    double variance = Math.max(StatUtils.variance(values), LEAST_VARIANCE);
    NestedModel used =
        model.orElse(
            NestedModel.of(
                BORROWED_NUGGET_SHARE * variance,
                new Spherical((1 - BORROWED_NUGGET_SHARE) * variance, BORROWED_RANGE_M)));
    Known known = new Known("fitted", used.withNugget(0), used.nugget(), 0, 0);
    return MappedGreen.of(
        green, new PositionKriging(green.stations(), known, 0, 0).predict(green.cells()));
  }

  private static Optional<NestedModel> fitted(List<GreenCase> pool) {
    List<Observations> groups = pool.stream().map(FittedVariogram::observations).toList();
    double cutoff = LagBins.defaultsFor(groups).cutoff() * 1.5;
    ExperimentalVariogram experimental =
        ExperimentalVariogram.of(
            groups,
            new LagBins(cutoff, cutoff / LAGS),
            Estimator.CRESSIE_HAWKINS,
            Direction.ALL,
            1);
    if (experimental.lags().isEmpty()) {
      return Optional.empty();
    }
    double shortest = experimental.lags().get(0).distance();
    return new AutomaticFit(SHAPES.stream().map(s -> candidate(s, shortest, cutoff)).toList())
        .fit(experimental)
        .fittedModel()
        .filter(m -> m.nuggetShare() < ALL_NUGGET);
  }

  private static WeightedLeastSquares candidate(Shape shape, double shortest, double cutoff) {
    double practical = shape.model(1, 1, 0.5).practicalRange();
    return WeightedLeastSquares.of(
            StructureSpec.of(shape)
                .withRange(
                    Parameter.between(
                        2 * Math.min(shortest, cutoff) / practical, 2 * cutoff / practical)))
        .withWeighting(Weighting.PAIRS);
  }

  private static Observations observations(GreenCase green) {
    List<Station> s = green.stations();
    return Observations.of(
        s.stream().mapToDouble(Station::x).toArray(),
        s.stream().mapToDouble(Station::y).toArray(),
        s.stream().mapToDouble(Station::value).toArray());
  }
}
