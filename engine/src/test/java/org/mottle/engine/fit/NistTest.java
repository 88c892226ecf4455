package org.mottle.engine.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.reference.ReferenceTable;
import org.mottle.engine.variogram.VariogramModel;

/**
 * Problems of the NIST StRD collection for nonlinear regression with certified answers. Both are y
 * = b1 (1 - exp(-b2 x)): an exponential variogram without nugget, partial sill b1, range 1 / b2, by
 * ordinary least squares.
 */
class NistTest {

  @ParameterizedTest
  @ValueSource(strings = {"Misra1a", "BoxBOD"})
  void certifiedParameters(String problem) {
    ReferenceTable data = ReferenceTable.of("nist_" + problem.toLowerCase(java.util.Locale.ROOT));
    ExperimentalVariogram variogram =
        new ExperimentalVariogram(
            IntStream.range(0, data.rows())
                .mapToObj(i -> new Lag(1, data.number(i, "x"), data.number(i, "y")))
                .toList());
    Fitted fitted =
        (Fitted)
            WeightedLeastSquares.of(Shape.EXPONENTIAL)
                .withNugget(Parameter.fixed(0))
                .withWeighting(Weighting.EQUAL)
                .fit(variogram);
    ReferenceTable certified = ReferenceTable.of("nist_nls");
    int row = certified.rowOf("set", problem);
    double b1 = certified.number(row, "certified");
    double b2 = certified.number(row + 1, "certified");
    double rss = certified.number(row, "rss_certified");
    VariogramModel model = fitted.model().structures().get(0).model();
    assertThat(model.partialSill()).isCloseTo(b1, within(1e-7 * b1));
    assertThat(1 / model.range()).isCloseTo(b2, within(1e-7 * b2));
    assertThat(fitted.weightedSse()).isCloseTo(rss, within(1e-10 * rss));
  }
}
