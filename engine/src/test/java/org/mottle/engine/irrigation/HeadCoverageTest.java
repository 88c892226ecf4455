package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.simulation.NormalStream;
import org.mottle.engine.survey.Green;

/** Which heads reach which ground. */
class HeadCoverageTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static Green square(double side) {
    return Green.of("G", FACTORY.toGeometry(new Envelope(0, side, 0, side)));
  }

  private static Head head(String id, double x, double y, double radius, double from, double to) {
    return new Head(id, "G", "", x, y, radius, from, to, 12, Double.NaN);
  }

  @Test
  void noHeadsReachNothing() {
    HeadCoverage none = HeadCoverage.of(square(10), List.of());
    assertThat(none.parts()).hasSize(1);
    assertThat(none.shares()).containsOnlyKeys(0);
    assertThat(none.shares().get(0)).isCloseTo(1, within(1e-12));
    assertThat(none.meanRateMmH()).isZero();
  }

  /** A quarter circle in the corner of a square: π / 4 of it, less the chords. */
  @Test
  void aQuarterCircleInACorner() {
    HeadCoverage one = HeadCoverage.of(square(10), List.of(head("a", 0, 0, 10, 0, 90)));
    assertThat(one.shares().get(1)).isCloseTo(Math.PI / 4, within(3e-4));
    assertThat(one.shares().get(0)).isCloseTo(1 - Math.PI / 4, within(3e-4));
    Geometry in = one.parts().get(1).area();
    assertThat(in.contains(FACTORY.createPoint(new Coordinate(1, 1)))).isTrue();
    assertThat(in.contains(FACTORY.createPoint(new Coordinate(9, 9)))).isFalse();
    // at the distance of the radius π heads share the rate; one has 12 / π
    assertThat(one.parts().get(1).rateMmH()).isCloseTo(12 / Math.PI, within(1e-12));
  }

  /** Four quarter circles from the corners of a square: π heads on average, so the rate itself. */
  @Test
  void headToHeadInASquareGivesTheRateOnAverage() {
    List<Head> heads =
        List.of(
            head("sw", 0, 0, 10, 0, 90),
            head("nw", 0, 10, 10, 90, 180),
            head("ne", 10, 10, 10, 180, 270),
            head("se", 10, 0, 10, 270, 360));
    HeadCoverage four = HeadCoverage.of(square(10), heads);
    assertThat(four.meanRateMmH()).isCloseTo(12, within(0.005));
    assertThat(four.shares()).containsOnlyKeys(2, 3, 4);
    for (HeadSpacing s : four.spacing()) {
      assertThat(s.nearestM()).isEqualTo(10);
      assertThat(s.perRadius()).isEqualTo(1);
      assertThat(s.reachesHead()).isTrue();
      assertThat(s.reachedBy()).isEqualTo(2);
    }
  }

  @Test
  void anUnknownRateIsUnknownOnlyWhereItReaches() {
    Head unknown = new Head("a", "G", "", 0, 0, 5, 0, 90, Double.NaN, Double.NaN);
    HeadCoverage c = HeadCoverage.of(square(10), List.of(unknown, head("b", 10, 10, 4, 180, 270)));
    assertThat(c.parts().stream().filter(p -> Double.isNaN(p.rateMmH())).toList())
        .singleElement()
        .matches(p -> p.heads().equals(List.of(unknown)));
    assertThat(c.meanRateMmH()).isNaN();
  }

  @Test
  void aHeadAloneHasNoNeighbour() {
    HeadSpacing s =
        HeadCoverage.of(square(10), List.of(head("a", 0, 0, 9, 10, 10))).spacing().get(0);
    assertThat(s.nearestM()).isNaN();
    assertThat(s.perRadius()).isNaN();
    assertThat(s.reachesHead()).isFalse();
    assertThat(s.reachedBy()).isZero();
  }

  @Test
  void theArcDecidesWhetherANeighbourIsReached() {
    HeadCoverage c =
        HeadCoverage.of(
            square(10), List.of(head("a", 0, 5, 17, 0, 180), head("b", 10, 5, 17, 0, 180)));
    assertThat(c.spacing().get(0).reachesHead()).isTrue(); // b lies east of a
    assertThat(c.spacing().get(1).reachesHead()).isFalse(); // a lies west of b
    assertThat(c.spacing().get(0).reachedBy()).isZero();
    assertThat(c.spacing().get(1).reachedBy()).isEqualTo(1);
  }

  /** Heads anywhere, arcs over north, full circles, a green with a hole. */
  @Test
  void partsTileTheGreen() {
    Geometry hole = FACTORY.createPoint(new Coordinate(3, 2)).buffer(2);
    Geometry outline = FACTORY.createPoint(new Coordinate(0, 0)).buffer(11, 12).difference(hole);
    Green green = Green.of("G", outline);
    NormalStream random = new NormalStream(8, 1);
    for (int trial = 0; trial < 25; trial++) {
      List<Head> heads = new ArrayList<>();
      for (int i = 0; i < 1 + trial % 6; i++) {
        double from = Math.rint(360 * Math.abs(random.next()) % 360);
        double to = trial % 5 == 0 ? from : Math.rint(360 * Math.abs(random.next()) % 360);
        heads.add(head("h" + i, 9 * random.next(), 9 * random.next(), 5 + 4 * i, from, to));
      }
      HeadCoverage c = HeadCoverage.of(green, heads);
      String what = "trial " + trial;
      double area = c.parts().stream().mapToDouble(p -> p.area().getArea()).sum();
      assertThat(area).as(what).isCloseTo(green.areaM2(), within(1e-6));
      assertThat(c.shares().values().stream().mapToDouble(s -> s).sum())
          .as(what)
          .isCloseTo(1, within(1e-12));
      for (int i = 0; i < c.parts().size(); i++) {
        Geometry a = c.parts().get(i).area();
        assertThat(a.isValid()).as(what).isTrue();
        for (int j = 0; j < i; j++) {
          assertThat(a.intersection(c.parts().get(j).area()).getArea())
              .as(what)
              .isCloseTo(0, within(1e-6));
        }
        // the true circle agrees, but for a chord's breadth
        Coordinate in = a.getInteriorPoint().getCoordinate();
        if (a.getArea() > 0.5) {
          assertThat(HeadCoverage.reaching(heads, in.x, in.y))
              .as(what)
              .isEqualTo(c.parts().get(i).count());
        }
      }
    }
  }
}
