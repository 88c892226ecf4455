package org.mottle.export.calibration;

import java.util.List;
import java.util.stream.IntStream;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.fit.AutomaticFit;
import org.mottle.engine.fit.Fitted;
import org.mottle.engine.fit.Weighting;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;

/**
 * Kriging with the variogram of the truth itself: fitted, green by green and survey by survey, to
 * every fourth cell of the truth, so that slopes, edges and faults are in it as the generator's own
 * covariance has them not; the nugget and the errors of position are the generator's. A mark that a
 * survey cannot reach, but that is not misled by a faulty green. Where no variogram can be fitted
 * to the truth, the generator's stands.
 */
record ExhaustiveVariogram() implements Method {
  private static final int EVERY = 4;

  @Override
  public String name() {
    return "variogram of the truth";
  }

  @Override
  public Mapping map(List<GreenCase> course) {
    return new Mapping(course.stream().map(ExhaustiveVariogram::map).toList(), List.of());
  }

  private static MappedGreen map(GreenCase green) {
    Known known = green.known();
    NestedModel model = fitted(green);
    Known found =
        new Known(
            known.pool(),
            model.withNugget(0),
            known.nugget() + model.nugget(),
            known.jitterSd(),
            known.shiftSd());
    return MappedGreen.of(
        green,
        new PositionKriging(green.stations(), found, known.jitterSd(), known.shiftSd())
            .predict(green.cells()));
  }

  private static NestedModel fitted(GreenCase green) {
    Cells cells = green.cells();
    int[] some =
        IntStream.range(0, cells.size()).filter(i -> cells.index()[i] % EVERY == 0).toArray();
    Observations truth = Observations.of(cells.x(), cells.y(), green.truth()).rows(some);
    LagBins third = LagBins.defaultsFor(truth);
    LagBins half = new LagBins(1.5 * third.cutoff(), 1.5 * third.width());
    ExperimentalVariogram variogram =
        ExperimentalVariogram.of(List.of(truth), half, Estimator.MATHERON, Direction.ALL, 1);
    return AutomaticFit.of(Weighting.PAIRS).fit(variogram) instanceof Fitted fitted
            && fitted.model().bounded()
            && !fitted.model().structures().isEmpty()
        ? fitted.model()
        : green.known().structure();
  }
}
