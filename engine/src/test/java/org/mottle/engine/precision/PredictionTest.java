package org.mottle.engine.precision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.reference.ReferenceTable;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Power;
import org.mottle.engine.variogram.Spherical;

class PredictionTest {
  private static final Geometry GREEN = Plans.round(516);
  private static final NestedModel MODEL = NestedModel.of(1.5, new Spherical(4, 10));

  /**
   * Mean standard deviation and share explained on 516 m², partial sill 4, nugget 1.5: indicative
   * numbers of the project's own, worked out for square grids on a green of another shape; rounded
   * to 0.01 and 1 %. Hence the tolerance.
   */
  @ParameterizedTest
  @CsvSource({
    "6, 9, 1.95, 0.04", "6, 12, 1.87, 0.12", "6, 18, 1.76, 0.22", "6, 25, 1.66, 0.30",
    "6, 36, 1.55, 0.40", "10, 9, 1.70, 0.27", "10, 12, 1.61, 0.35", "10, 18, 1.47, 0.45",
    "10, 25, 1.37, 0.52", "10, 36, 1.28, 0.59", "15, 9, 1.48, 0.45", "15, 12, 1.39, 0.52",
    "15, 18, 1.27, 0.59", "15, 25, 1.18, 0.65", "15, 36, 1.09, 0.70"
  })
  void nearTheIndicativeTable(double range, int n, double sd, double explained) {
    Prediction plan = Plans.grid(GREEN, n, NestedModel.of(1.5, new Spherical(4, range)), 0);
    assertThat(plan.stations().size()).isEqualTo(n);
    assertThat(plan.meanSd()).isCloseTo(sd, within(0.03));
    assertThat(plan.explained()).isCloseTo(explained, within(0.035));
  }

  /**
   * At the centre of four stations of a square grid, grid_spacing_okvar.csv: gstat 2.1.0, R 4.2.2,
   * points, hence with the nugget of 2 that is filtered here; model 2 nugget + 8 spherical (15 m),
   * 16 stations. A green of one piece of ground, a metre square round the centre, has that
   * variance.
   */
  @Test
  void varianceAtTheCentreOfACell() {
    ReferenceTable table = ReferenceTable.of("grid_spacing_okvar");
    assertThat(table.rows()).isEqualTo(11);
    NestedModel model = NestedModel.of(2, new Spherical(8, 15));
    Geometry piece = new GeometryFactory().toGeometry(new Envelope(0, 1, 0, 1));
    for (int r = 0; r < table.rows(); r++) {
      double d = table.number(r, "spacing");
      List<Coordinate> stations =
          java.util.stream.IntStream.range(0, 16)
              .mapToObj(i -> new Coordinate(0.5 + (i % 4 - 1.5) * d, 0.5 + (i / 4 - 1.5) * d))
              .toList();
      Prediction plan = Plans.at(piece, stations, model, 0);
      assertThat(plan.meanSd() * plan.meanSd() + model.nugget())
          .as("spacing %s", d)
          .isCloseTo(table.number(r, "sq16_point"), within(1e-9));
      assertThat(plan.largestSd()).isEqualTo(plan.meanSd());
    }
  }

  @Test
  void moreStationsTellMore() {
    double before = Double.POSITIVE_INFINITY;
    for (int n : new int[] {4, 9, 16, 25, 36, 64}) {
      Prediction plan = Plans.grid(GREEN, n, MODEL, 0.7);
      assertThat(plan.meanSd()).as("%d stations", n).isLessThan(before);
      assertThat(plan.largestSd()).isGreaterThanOrEqualTo(plan.meanSd());
      before = plan.meanSd();
    }
  }

  @Test
  void anErrorOfThePlacesCostsAndMoreInsertionsGain() {
    Prediction exact = Plans.grid(GREEN, 18, MODEL, 0);
    Prediction paced = Plans.grid(GREEN, 18, MODEL, 0.7);
    Prediction guessed = Plans.grid(GREEN, 18, MODEL, 3);
    assertThat(exact.meanSd()).isLessThan(paced.meanSd());
    assertThat(paced.meanSd()).isLessThan(guessed.meanSd());
    double[] thrice = new double[18];
    java.util.Arrays.fill(thrice, 3);
    Prediction often =
        Prediction.of(
            GREEN,
            exact.stations().xs(),
            exact.stations().ys(),
            thrice,
            MODEL,
            exact.stations().positionError());
    assertThat(often.meanSd()).isLessThan(exact.meanSd());
  }

  /** One station far off knows the mean and no more: variance 2 sills less nothing, plus noise. */
  @Test
  void oneStationOutOfRange() {
    Geometry piece = new GeometryFactory().toGeometry(new Envelope(0, 1, 0, 1));
    Prediction plan = Plans.at(piece, List.of(new Coordinate(50, 0)), MODEL, 0);
    assertThat(plan.meanSd()).isCloseTo(Math.sqrt(4 + 4 + 1.5), within(1e-12));
    assertThat(plan.explained()).isZero();
  }

  @Test
  void plannedStationsAreFoundByPacingAndControlsLeftOut() {
    Green green = Green.of("G1", GREEN);
    PlannedStation one = new PlannedStation("1", 2, 3, Reading.Role.PLAN, 2);
    PlannedStation control = new PlannedStation("C", 0, 0, Reading.Role.CONTROL, 5);
    Prediction plan = Prediction.of(green, List.of(control, one), MODEL);
    Prediction same =
        Prediction.of(
            GREEN,
            new double[] {2},
            new double[] {3},
            new double[] {2},
            MODEL,
            new PositionError(new double[] {PositionSource.PLANNED.jitterM()}, 0));
    assertThat(plan.meanSd()).isEqualTo(same.meanSd());
    assertThatThrownBy(() -> Prediction.of(green, List.of(control), MODEL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("G1");
  }

  /** Shares and range of the prior, which says where they are from. */
  @Test
  void borrowedVariogramHasTheTotalVariance() {
    NestedModel borrowed = Prediction.borrowed(2);
    assertThat(borrowed.sill()).isCloseTo(4, within(1e-12));
    assertThat(borrowed.nuggetShare()).isCloseTo(0.35, within(1e-12));
    assertThat(borrowed.semivariance(12, 0)).isCloseTo(4, within(1e-12));
    assertThat(borrowed.semivariance(11, 0)).isLessThan(4);
    assertThatThrownBy(() -> Prediction.borrowed(0)).hasMessageContaining("standard deviation");
  }

  @Test
  void nothingIsExplainedWhereAllIsNugget() {
    Prediction plan = Plans.grid(GREEN, 9, new NestedModel(2, List.of()), 0);
    assertThat(plan.explained()).isZero();
    assertThat(plan.meanSd()).isCloseTo(Math.sqrt(2.0 / 9), within(1e-9));
    assertThat(SpotDetection.usualContrastPct(plan)).isZero();
  }

  @Test
  void nonsenseIsRefused() {
    assertThatThrownBy(() -> Plans.at(GREEN, List.of(), MODEL, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 stations");
    List<Coordinate> one = List.of(new Coordinate(0, 0));
    assertThatThrownBy(() -> Plans.at(GREEN, one, NestedModel.of(1, new Power(1, 1)), 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("levels off");
    List<Coordinate> twice = List.of(new Coordinate(0, 0), new Coordinate(0, 0));
    assertThatThrownBy(() -> Plans.at(GREEN, twice, MODEL.withNugget(0), 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("cannot be kriged");
    double[] place = {0};
    PositionError exact = new PositionError(place, 0);
    assertThatThrownBy(() -> Prediction.of(GREEN, place, place, new double[] {0.5}, MODEL, exact))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("insertions at station 1");
    assertThatThrownBy(() -> Prediction.of(GREEN, place, place, new double[] {1, 1}, MODEL, exact))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("2 numbers of insertions for 1 stations");
  }
}
