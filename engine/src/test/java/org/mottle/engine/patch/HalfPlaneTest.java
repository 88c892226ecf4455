package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.GreenCells;

/**
 * The ground west of a line whose place T is normal: P(x &lt; T) = 1 - F(x). Outline, core,
 * envelope and the quantiles of the area are those of T. Realisations are at the quantiles (r +
 * 0.5) / R, so that nothing is left to chance.
 */
class HalfPlaneTest {
  private static final double X = 500_000;
  private static final double Y = 5_316_300;
  private static final double HEIGHT = 20;
  private static final double CELL = 0.25;
  private static final int REALISATIONS = 400;
  private static final Geometry OUTLINE = InventedGround.rectangle(X, Y, X + 40, Y + HEIGHT);
  private static final GreenCells CELLS = GreenCells.of(OUTLINE, CELL);

  private static List<Coordinate> stations() {
    List<Coordinate> stations = new ArrayList<>();
    for (double x = 2; x < 40; x += 4) {
      for (double y = 2; y < HEIGHT; y += 4) {
        stations.add(new Coordinate(X + x, Y + y));
      }
    }
    return stations;
  }

  private static Marks marks(ZoneClass kind, double middle, double sd) {
    NormalDistribution place = new NormalDistribution(null, X + middle, sd);
    double[] x = CELLS.neededX();
    double[] p = new double[x.length];
    double[] none = new double[x.length];
    Excursions.Builder builder = Excursions.builder(REALISATIONS, x.length);
    for (int i = 0; i < x.length; i++) {
      p[i] = 1 - place.cumulativeProbability(x[i]);
    }
    for (int r = 0; r < REALISATIONS; r++) {
      double edge = place.inverseCumulativeProbability((r + 0.5) / REALISATIONS);
      for (int i = 0; i < x.length; i++) {
        if (x[i] < edge && kind == ZoneClass.DRY) {
          builder.markBelow(r, i);
        } else if (x[i] < edge) {
          builder.markAbove(r, i);
        }
      }
    }
    Probabilities probabilities =
        kind == ZoneClass.DRY
            ? Probabilities.of(CELLS, p, none, none, builder.build())
            : Probabilities.of(CELLS, none, p, none, builder.build());
    return Marks.of(
        new Marks.Subject(OUTLINE, probabilities, stations()),
        MarkRule.defaults(),
        CELLS.surface(none),
        RegionMean.UNKNOWN);
  }

  @ParameterizedTest
  @CsvSource({"DRY, 20, 3", "WET, 20, 3", "DRY, 15, 1.5", "WET, 24, 5"})
  void figuresAreThoseOfTheNormalDistribution(ZoneClass kind, double middle, double sd) {
    Marks marks = marks(kind, middle, sd);
    assertThat(marks.patches()).hasSize(1);
    assertThat(marks.spots()).isEmpty();
    Patch patch = marks.patches().get(0);
    Patch.Likelihood likelihood = patch.likelihood().orElseThrow();
    ExpectedGround expected = marks.expected().get(kind == ZoneClass.DRY ? 0 : 1);
    double column = HEIGHT * CELL;
    assertThat(patch.kind()).isEqualTo(kind);
    assertThat(expected.level()).isCloseTo(0.5, within(1e-3));
    assertThat(expected.areaM2()).isCloseTo(middle * HEIGHT, within(0.2));
    assertThat(expected.placeKnown()).isTrue();
    assertThat(patch.areaM2()).isCloseTo(middle * HEIGHT, within(0.2));
    // mean over x < m of 1 - F(x), with the integral of F from the far west to m sd / sqrt(2 pi)
    assertThat(likelihood.pMean())
        .isCloseTo(1 - sd / Math.sqrt(2 * Math.PI) / middle, within(2e-3));
    assertThat(likelihood.pExist()).isEqualTo(1);
    assertThat(likelihood.bounds().core().getArea())
        .isCloseTo((middle - 1.28155 * sd) * HEIGHT, within(column));
    assertThat(likelihood.bounds().envelope().getArea())
        .isCloseTo((middle + 1.28155 * sd) * HEIGHT, within(column));
    assertThat(expected.areaLow()).isCloseTo((middle - 1.64485 * sd) * HEIGHT, within(column));
    assertThat(expected.areaHigh()).isCloseTo((middle + 1.64485 * sd) * HEIGHT, within(column));
    double reach = Math.min(1.64485 * sd, marks.smallest().spacingM());
    assertThat(likelihood.areaHigh()).isCloseTo((middle + reach) * HEIGHT, within(1.5 * column));
    assertThat(likelihood.areaLow()).isEqualTo(expected.areaLow());
  }

  /** With a lone edge the other kind has no ground, no patch and no spot. */
  @ParameterizedTest
  @EnumSource(names = {"DRY", "WET"})
  void theOtherKindIsNotThere(ZoneClass kind) {
    ExpectedGround other = marks(kind, 20, 3).expected().get(kind == ZoneClass.DRY ? 1 : 0);
    assertThat(other.areaM2()).isZero();
    assertThat(other.areaHigh()).isZero();
    assertThat(other.placeKnown()).isFalse();
  }
}
