package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Pooling;
import org.mottle.engine.mapping.Stations.Station;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.SurveyVariogram;
import org.mottle.engine.mapping.VariogramSettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * Maps with a variogram fitted by weighted least squares, a green's own or pooled over a survey,
 * and the normal distribution of its kriging error. Where the mapper makes no map with a standard
 * deviation (no variogram, or one that is all nugget), the borrowed one stands in, so that no
 * method is spared its hard greens: spherical, range 12 m, 35 % nugget, sill the variance of the
 * green's station values.
 *
 * @param name for the tables
 * @param pooling over which greens a variogram is pooled
 */
record EngineMapper(String name, Pooling pooling) implements Method {
  private static final double BORROWED_RANGE_M = 12;
  private static final double BORROWED_NUGGET_SHARE = 0.35;
  private static final double LEAST_VARIANCE = 0.01;

  @Override
  public Mapping map(List<GreenCase> course) {
    MappingSettings settings =
        MappingSettings.defaults()
            .withCellM(course.get(0).cells().grid().cell())
            .withVariogram(VariogramSettings.defaults().withPooling(pooling));
    SurveyMap map =
        new SurveyMapper(settings)
            .map(course.stream().map(GreenCase::subject).toList(), 1, Progress.NONE);
    List<MappedGreen> greens = new ArrayList<>();
    for (int i = 0; i < course.size(); i++) {
      GreenCase green = course.get(i);
      greens.add(MappedGreen.of(green, cells(green, map.outcomes().get(i))));
    }
    return new Mapping(
        greens, map.variograms().stream().flatMap(v -> claim(v, course).stream()).toList());
  }

  private static CellDistribution cells(GreenCase green, Outcome outcome) {
    if (!(outcome instanceof Outcome.Mapped mapped)
        || mapped.basis().method() != org.mottle.engine.mapping.Method.KRIGING) {
      return borrowed(green);
    }
    int[] index = green.cells().index();
    double[] mean = Arrays.stream(index).mapToDouble(mapped.surface().mean()::value).toArray();
    double[] sd = Arrays.stream(index).mapToDouble(mapped.surface().sd()::value).toArray();
    return CellDistribution.normal(mean, Arrays.stream(sd).map(s -> Math.max(s, 1e-4)).toArray());
  }

  private static CellDistribution borrowed(GreenCase green) {
    double[] values = green.stations().stream().mapToDouble(Station::value).toArray();
    double variance = Math.max(StatUtils.variance(values), LEAST_VARIANCE);
    Known known =
        new Known(
            "borrowed",
            NestedModel.of(
                0, new Spherical((1 - BORROWED_NUGGET_SHARE) * variance, BORROWED_RANGE_M)),
            BORROWED_NUGGET_SHARE * variance,
            0,
            0);
    return new PositionKriging(green.stations(), known, 0, 0).predict(green.cells());
  }

  private static Optional<VariogramClaim> claim(SurveyVariogram found, List<GreenCase> course) {
    return found
        .model()
        .filter(model -> found.structured())
        .map(
            model ->
                new VariogramClaim(
                    pool(found, course),
                    model.structures().get(0).model().practicalRange(),
                    model.nugget(),
                    Optional.empty(),
                    Optional.empty()));
  }

  private static String pool(SurveyVariogram found, List<GreenCase> course) {
    return course.stream()
        .filter(c -> found.greens().contains(c.subject().green().id()))
        .map(c -> c.known().pool())
        .findFirst()
        .orElseThrow();
  }
}
