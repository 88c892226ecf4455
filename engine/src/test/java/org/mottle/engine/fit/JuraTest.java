package org.mottle.engine.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.reference.ReferenceTable;

/**
 * A second survey, northings of 5,200,000 m and values of thousandths and of ten millions, from the
 * points to the models. Computed with gstat 2.1.0, R 4.2.2 (script jura.R).
 */
class JuraTest {
  private static final ReferenceTable POINTS = ReferenceTable.of("jura_points");
  private static final ReferenceTable VARIOGRAMS = ReferenceTable.of("jura_vgm");
  private static final ReferenceTable FITS = ReferenceTable.of("jura_fits");

  @ParameterizedTest
  @CsvSource({
    "cd, default", "cd, fixed", "cd, cressie", "cd, directional",
    "ni, default", "ni, fixed", "ni, cressie", "ni, directional"
  })
  void variogramsAreGstats(String value, String kind) {
    List<Lag> lags = variogram(value, kind).lags();
    int[] rows = rows(VARIOGRAMS, value, kind);
    assertThat(lags).hasSameSizeAs(rows);
    for (int i = 0; i < rows.length; i++) {
      Lag lag = lags.get(i);
      double distance = VARIOGRAMS.number(rows[i], "dist");
      double gamma = VARIOGRAMS.number(rows[i], "gamma");
      assertThat(lag.pairs()).as("lag %s", i).isEqualTo((long) VARIOGRAMS.number(rows[i], "np"));
      assertThat(lag.distance()).as("lag %s", i).isCloseTo(distance, within(1e-8 * distance));
      assertThat(lag.semivariance()).as("lag %s", i).isCloseTo(gamma, within(1e-8 * gamma));
    }
  }

  @ParameterizedTest
  @CsvSource({"cd, default", "cd, fixed", "cd, cressie", "ni, default", "ni, fixed", "ni, cressie"})
  void fitsAreNoWorseThanGstats(String value, String kind) {
    ExperimentalVariogram variogram = variogram(value, kind);
    int[] rows = rows(FITS, value, kind);
    assertThat(rows).hasSizeGreaterThan(8);
    for (int row : rows) {
      Shape shape =
          switch (FITS.text(row, "model")) {
            case "Sph" -> Shape.SPHERICAL;
            case "Exp" -> Shape.EXPONENTIAL;
            case "Gau" -> Shape.GAUSSIAN;
            case "Cir" -> Shape.CIRCULAR;
            case "Pen" -> Shape.PENTASPHERICAL;
            default -> Shape.MATERN;
          };
      Weighting weighting =
          switch (FITS.text(row, "method")) {
            case "7" -> Weighting.PAIRS_OVER_LAG_SQUARED;
            case "1" -> Weighting.PAIRS;
            default -> Weighting.EQUAL;
          };
      Fitted fitted =
          (Fitted) WeightedLeastSquares.of(shape).withWeighting(weighting).fit(variogram);
      assertThat(fitted.weightedSse())
          .as("%s %s %s by %s", value, kind, shape, weighting)
          .isLessThanOrEqualTo(FITS.number(row, "sse") * (1 + 1e-6));
    }
  }

  private static ExperimentalVariogram variogram(String value, String kind) {
    Observations o =
        Observations.of(POINTS.numbers("x"), POINTS.numbers("y"), POINTS.numbers(value));
    List<Direction> directions =
        kind.equals("directional")
            ? Stream.of(20.0, 65.0, 110.0, 155.0).map(a -> Direction.of(a, 22.5)).toList()
            : List.of(Direction.ALL);
    LagBins bins =
        switch (kind) {
          case "default" -> LagBins.defaultsFor(List.of(o));
          case "directional" -> new LagBins(1800, 120);
          default -> new LagBins(2000, 80);
        };
    return ExperimentalVariogram.directional(
        List.of(o),
        bins,
        kind.equals("cressie") ? Estimator.CRESSIE_HAWKINS : Estimator.MATHERON,
        directions,
        1);
  }

  private static int[] rows(ReferenceTable table, String value, String kind) {
    return IntStream.range(0, table.rows())
        .filter(i -> table.text(i, "value").equals(value) && table.text(i, "kind").equals(kind))
        .toArray();
  }
}
