package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.GreenCells;

class MarksTest {
  private static final double X = 500_000;
  private static final double Y = 5_316_300;
  private static final MarkRule RULE = MarkRule.defaults().withLeastPart(0.25);

  private static InventedChances invented(int seed, double spread) {
    Random random = new Random(seed);
    Geometry outline = InventedGround.green(random, X, Y, 14, 72, seed % 2 == 0);
    return new InventedChances(outline, 0.5, 200, random, spread, 9);
  }

  private static Marks marks(InventedChances c, MarkRule rule) {
    return Marks.of(c.subject(), rule, c.cells.surface(c.mean), RegionMean.UNKNOWN);
  }

  @Test
  void coreLiesInOutlineLiesInEnvelope() {
    int patches = 0;
    for (int seed = 0; seed < 8; seed++) {
      InventedChances c = invented(seed, seed % 3 == 0 ? 0.7 : 0.3);
      for (Patch patch : marks(c, RULE).patches()) {
        String what = "seed " + seed + ", patch " + patch.number();
        Patch.Bounds bounds = patch.likelihood().orElseThrow().bounds();
        assertThat(beyond(bounds.core(), patch.geometry())).as(what).isLessThan(1e-9);
        assertThat(beyond(patch.geometry(), bounds.envelope())).as(what).isLessThan(1e-9);
        assertThat(beyond(bounds.envelope(), c.outline)).as(what).isLessThan(1e-4);
        patches++;
      }
    }
    assertThat(patches).isGreaterThan(6);
  }

  private static double beyond(Geometry one, Geometry other) {
    return OverlayNGRobust.overlay(one, other, OverlayNG.DIFFERENCE).getArea();
  }

  @Test
  void theOutlineHasTheExpectedArea() {
    for (int seed = 0; seed < 8; seed++) {
      InventedChances c = invented(seed, 0.5);
      GreenGround ground = new GreenGround(c.outline, c.cells);
      for (ExpectedGround expected : marks(c, RULE).expected()) {
        if (expected.areaM2() > 5) {
          JointLevels none = new JointLevels(2, -1);
          double drawn =
              ExcursionSets.of(
                      c.outline,
                      c.probabilities().of(expected.kind()),
                      expected.level(),
                      none,
                      MarkRule.defaults())
                  .outline()
                  .stream()
                  .mapToDouble(Geometry::getArea)
                  .sum();
          String what = "seed " + seed + ", " + expected.kind();
          assertThat(drawn)
              .as(what)
              .isCloseTo(expected.areaM2(), within(0.3 + 0.005 * expected.areaM2()));
          assertThat(expected.areaM2()).as(what).isBetween(expected.areaLow(), expected.areaHigh());
          assertThat(
                  new VorobevLevel(ground, c.probabilities().of(expected.kind()))
                      .areaAbove(expected.level()))
              .as(what)
              .isCloseTo(expected.areaM2(), within(0.01));
        }
      }
    }
  }

  /** Joint statements, counted again cell by cell with a flood fill of its own. */
  @Test
  void coreAndEnvelopeHoldInNineTenthsOfTheRealisations() {
    for (int seed = 0; seed < 6; seed++) {
      InventedChances c = invented(seed, 0.5);
      GreenGround ground = new GreenGround(c.outline, c.cells);
      double[] p = new double[ground.size()];
      for (int i = 0; i < p.length; i++) {
        p[i] = c.probabilities().dry().value(ground.cell(i));
      }
      JointLevels levels = JointLevels.of(ground, p, ZoneClass.DRY, c.excursions, RULE);
      int cores = 0;
      int envelopes = 0;
      for (int r = 0; r < c.excursions.realisations(); r++) {
        boolean[] notDry = new boolean[p.length];
        boolean[] missed = new boolean[p.length];
        for (int i = 0; i < p.length; i++) {
          boolean dry = c.excursions.below(r, ground.position(i));
          notDry[i] = p[i] >= levels.core() && !dry;
          missed[i] = p[i] < levels.envelope() && dry;
        }
        cores += largest(ground, notDry) < RULE.speckM2() ? 1 : 0;
        envelopes += largest(ground, missed) < RULE.speckM2() ? 1 : 0;
      }
      assertThat(cores).as("seed %d, cores that hold", seed).isBetween(180, 200);
      assertThat(envelopes).as("seed %d, envelopes that hold", seed).isBetween(180, 200);
    }
  }

  private static double largest(GreenGround ground, boolean[] in) {
    boolean[] seen = new boolean[in.length];
    double largest = 0;
    for (int start = 0; start < in.length; start++) {
      List<Integer> open = new ArrayList<>();
      double area = 0;
      if (in[start] && !seen[start]) {
        open.add(start);
        seen[start] = true;
      }
      while (!open.isEmpty()) {
        int cell = open.remove(open.size() - 1);
        area += ground.areaM2(cell);
        for (int k = 0; k < 8; k++) {
          int other = ground.neighbour(cell, k);
          if (other >= 0 && in[other] && !seen[other]) {
            seen[other] = true;
            open.add(other);
          }
        }
      }
      largest = Math.max(largest, area);
    }
    return largest;
  }

  @Test
  void nothingIsBothAndEveryStationThatIsLikelySoIsMarked() {
    for (int seed = 0; seed < 8; seed++) {
      InventedChances c = invented(seed, 0.4);
      Marks marks = marks(c, RULE);
      for (Patch patch : marks.patches()) {
        String what = "seed " + seed + ", patch " + patch.number();
        Patch.Likelihood likelihood = patch.likelihood().orElseThrow();
        assertThat(patch.readings()).as(what).isPositive();
        assertThat(patch.areaM2()).as(what).isGreaterThanOrEqualTo(marks.smallest().areaM2());
        assertThat(likelihood.pExist()).as(what).isGreaterThanOrEqualTo(0.5);
        assertThat(likelihood.areaExpected())
            .as(what)
            .isBetween(likelihood.areaLow(), likelihood.areaHigh());
        for (Spot spot : marks.spots()) {
          boolean inside = Patches.holds(patch.geometry(), spot.point());
          assertThat(inside && spot.kind() == patch.kind()).as("%s, %s", what, spot).isFalse();
        }
      }
      for (Spot spot : marks.spots()) {
        Coordinate nearest = c.stations.get(spot.station());
        assertThat(spot.point().distance(nearest)).isEqualTo(spot.distanceM());
        for (Coordinate station : c.stations) {
          assertThat(spot.point().distance(station)).isGreaterThanOrEqualTo(spot.distanceM());
        }
        assertThat(spot.pExist()).isBetween(0.0, 1.0);
        assertThat(spot.areaExpectedM2()).isPositive();
      }
      assertThat(marks(c, RULE)).as("seed %d, again", seed).isEqualTo(marks);
    }
  }

  /** A disc that k of 100 realisations have, probability a cone over it. */
  private static Marks disc(int k, double radius, double top, List<Coordinate> stations) {
    Geometry outline = InventedGround.rectangle(X, Y, X + 40, Y + 30);
    GreenCells cells = GreenCells.of(outline, 0.5);
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] p = new double[x.length];
    Excursions.Builder builder = Excursions.builder(100, x.length);
    for (int i = 0; i < x.length; i++) {
      double distance = Math.hypot(x[i] - X - 20, y[i] - Y - 15);
      p[i] = Math.max(0, top * (1 - distance / (2 * radius)));
      for (int r = 0; r < k && distance < radius; r++) {
        builder.markBelow(r, i);
      }
    }
    double[] none = new double[x.length];
    Probabilities probabilities = Probabilities.of(cells, p, none, none, builder.build());
    return Marks.of(
        new Marks.Subject(outline, probabilities, stations),
        RULE,
        cells.surface(none),
        RegionMean.UNKNOWN);
  }

  private static List<Coordinate> grid(double spacing) {
    List<Coordinate> stations = new ArrayList<>();
    for (double x = spacing / 2; x < 40; x += spacing) {
      for (double y = spacing / 2; y < 30; y += spacing) {
        stations.add(new Coordinate(X + x, Y + y));
      }
    }
    return stations;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 20, 49, 50, 80, 100})
  void existenceIsTheShareOfRealisationsThatHaveIt(int k) {
    Marks marks = disc(k, 6, 0.9, grid(4));
    if (k >= 50) {
      assertThat(marks.patches()).hasSize(1);
      assertThat(marks.spots()).isEmpty();
      assertThat(marks.patches().get(0).likelihood().orElseThrow().pExist()).isEqualTo(k / 100.0);
    } else {
      assertThat(marks.patches()).isEmpty();
      assertThat(marks.spots()).hasSize(1);
      assertThat(marks.spots().get(0).pExist()).isEqualTo(k / 100.0);
    }
  }

  @Test
  void whatIsSmallerThanTheSurveyCouldOutlineIsASpot() {
    List<Coordinate> stations = grid(4);
    Marks small = disc(90, 2.5, 0.9, stations);
    assertThat(small.patches()).isEmpty();
    assertThat(small.spots()).hasSize(1);
    Spot spot = small.spots().get(0);
    assertThat(spot.kind()).isEqualTo(ZoneClass.DRY);
    assertThat(spot.point().distance(new Coordinate(X + 20, Y + 15))).isLessThan(0.5);
    assertThat(spot.distanceM()).isLessThan(3);
    assertThat(disc(90, 6, 0.9, stations).patches()).hasSize(1);
    assertThat(disc(90, 6, 0.9, grid(10)).patches()).isEmpty();
  }

  @Test
  void aPatchWithoutAStationIsASpot() {
    List<Coordinate> outside = new ArrayList<>(grid(2));
    outside.removeIf(s -> s.distance(new Coordinate(X + 20, Y + 15)) < 7);
    Marks marks = disc(90, 6, 0.9, outside);
    assertThat(marks.patches()).isEmpty();
    assertThat(marks.spots()).hasSize(1);
  }

  /** Unlikely ground everywhere: an expected area, but no place. */
  @Test
  void noOutlineWhereThePlaceIsNotKnown() {
    Marks marks = disc(25, 9, 0.3, grid(4));
    ExpectedGround dry = marks.expected().get(0);
    assertThat(dry.level()).isLessThan(0.35);
    assertThat(dry.placeKnown()).isFalse();
    assertThat(dry.areaM2()).isGreaterThan(50);
    assertThat(marks.patches()).isEmpty();
    assertThat(marks.spots()).isEmpty();
  }

  /** A peak at one station on ground that is otherwise unlikely: the station is the spot. */
  @Test
  void aLoneDryStationIsASpot() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 40, Y + 30);
    GreenCells cells = GreenCells.of(outline, 0.5);
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] p = new double[x.length];
    Excursions.Builder builder = Excursions.builder(100, x.length);
    for (int i = 0; i < x.length; i++) {
      double distance = Math.hypot(x[i] - X - 18, y[i] - Y - 14);
      p[i] = Math.max(0.25, 0.7 - 0.4 * distance);
      for (int r = 0; r < 70 && distance < 1; r++) {
        builder.markBelow(r, i);
      }
    }
    double[] none = new double[x.length];
    List<Coordinate> stations = grid(4);
    Marks marks =
        Marks.of(
            new Marks.Subject(
                outline, Probabilities.of(cells, p, none, none, builder.build()), stations),
            RULE,
            cells.surface(none),
            RegionMean.UNKNOWN);
    assertThat(marks.expected().get(0).placeKnown()).isFalse();
    assertThat(marks.spots()).hasSize(1);
    Spot spot = marks.spots().get(0);
    assertThat((Object) spot.point()).isEqualTo(new Coordinate(X + 18, Y + 14));
    assertThat(stations.get(spot.station()).distance(spot.point())).isZero();
    assertThat(spot.pExist()).isEqualTo(0.7);
  }

  /** Ground half way between two patches belongs to the nearer one. */
  @Test
  void groundBetweenTwoPatchesBelongsToTheNearer() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 40, Y + 30);
    GreenCells cells = GreenCells.of(outline, 0.5);
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] p = new double[x.length];
    Excursions.Builder builder = Excursions.builder(10, x.length);
    for (int i = 0; i < x.length; i++) {
      double distance =
          Math.min(
              Math.hypot(x[i] - X - 10.25, y[i] - Y - 15),
              Math.hypot(x[i] - X - 29.75, y[i] - Y - 15));
      p[i] = distance < 8.6 ? 0.9 : 0;
      for (int r = 0; r < 10; r++) {
        builder.markBelow(r, i);
      }
    }
    double[] none = new double[x.length];
    Marks marks =
        Marks.of(
            new Marks.Subject(
                outline, Probabilities.of(cells, p, none, none, builder.build()), grid(5)),
            RULE,
            cells.surface(none),
            RegionMean.UNKNOWN);
    assertThat(marks.patches()).hasSize(2);
    double[] area =
        marks.patches().stream()
            .mapToDouble(q -> q.likelihood().orElseThrow().areaHigh())
            .toArray();
    assertThat(area[0]).isCloseTo(area[1], within(1.0));
    assertThat(Arrays.stream(area).sum()).isLessThanOrEqualTo(outline.getArea());
  }

  @Test
  void refuseGreensWithoutStationsOrRealisations() {
    InventedChances c = invented(1, 0.5);
    assertThatThrownBy(() -> new Marks.Subject(c.outline, c.probabilities(), List.of()))
        .hasMessage("marks need at least one station, was 0");
    Probabilities none =
        Probabilities.of(c.cells, c.dry, c.wet, c.sd, Excursions.none(c.cells.neededCount()));
    assertThatThrownBy(() -> new Marks.Subject(c.outline, none, c.stations))
        .hasMessage("marks need realisations, was 0");
    assertThatThrownBy(() -> Probabilities.of(c.cells, c.dry, c.wet, c.sd, Excursions.none(3)))
        .hasMessageContaining("had 3");
  }
}
