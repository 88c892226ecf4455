package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.simulation.NormalStream;

/** Mean over driest window. */
class SchedulingCoefficientTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Computed apart, by another program: mean 9.5; driest 1 x 1 6, 2 x 2 6.25, 3 x 3 22/3. */
  private static final Raster SIX =
      new Raster(
          new CellGrid(100, 206, 1, 6, 6),
          new double[] {
            8, 9, 10, 11, 12, 11, //
            9, 10, 11, 12, 12, 10, //
            7, 8, 10, 11, 11, 10, //
            6, 7, 9, 10, 11, 10, //
            6, 6, 8, 10, 10, 9, //
            7, 8, 9, 11, 12, 11
          });

  private static Geometry disc(double radius) {
    return FACTORY.createPoint(new Coordinate(500, 900)).buffer(radius, 32);
  }

  private static CatchCan can(String id, double x, double y, double ml) {
    return new CatchCan(id, "G", "", x, y, new CatchCan.Measure(ml, 95, 30), 1);
  }

  private static List<CatchCan> cans(int n, double spread, long seed) {
    NormalStream random = new NormalStream(seed, 2);
    List<CatchCan> cans = new ArrayList<>();
    while (cans.size() < n) {
      double x = 500 + 5 * random.next();
      double y = 900 + 5 * random.next();
      if (Math.hypot(x - 500, y - 900) < 11) {
        cans.add(can("c" + cans.size(), x, y, 50 * Math.exp(spread * random.next())));
      }
    }
    return cans;
  }

  private static double[] values(List<CatchCan> cans) {
    return cans.stream().mapToDouble(c -> c.measure().depthMm()).toArray();
  }

  @Test
  void theSheetOfSixBySix() {
    assertThat(SchedulingCoefficient.of(SIX, 1).value()).isCloseTo(1.583333, within(1e-6));
    assertThat(SchedulingCoefficient.of(SIX, 2).value()).isCloseTo(1.52, within(1e-12));
    assertThat(SchedulingCoefficient.of(SIX, 3).value()).isCloseTo(1.295455, within(1e-6));
    Scheduling two = SchedulingCoefficient.of(SIX, 2);
    // rows 4 and 5, columns 1 and 2
    assertThat(two.x()).isEqualTo(101);
    assertThat(two.y()).isEqualTo(202);
    assertThat(two.share()).isCloseTo(4 / 36.0, within(1e-15));
    assertThat(SchedulingCoefficient.of(SIX, 6).value()).isCloseTo(1, within(1e-15));
  }

  @Test
  void noWindowNoValueButAReason() {
    assertThat(SchedulingCoefficient.of(SIX, 7).refusal().orElseThrow().reason())
        .contains("no square of 7.0 m");
    double[] holed = SIX.values();
    for (int i = 0; i < 36; i += 2) {
      holed[i] = Double.NaN;
    }
    assertThat(SchedulingCoefficient.of(new Raster(SIX.grid(), holed), 2).refusal()).isPresent();
  }

  @Test
  void windowsThatTileAreNeverBelowOne() {
    NormalStream random = new NormalStream(3, 9);
    for (int trial = 0; trial < 100; trial++) {
      double[] v = new double[36];
      for (int i = 0; i < v.length; i++) {
        v[i] = Math.exp(random.next());
      }
      for (int k : new int[] {1, 2, 3, 6}) {
        double sc = SchedulingCoefficient.of(new Raster(SIX.grid(), v), k).value();
        double scaled =
            SchedulingCoefficient.of(
                    new Raster(SIX.grid(), Arrays.stream(v).map(x -> 7 * x).toArray()), k)
                .value();
        assertThat(sc).as("trial %s, k %s", trial, k).isGreaterThanOrEqualTo(1 - 1e-12);
        assertThat(scaled).isCloseTo(sc, within(1e-12 * sc));
      }
    }
  }

  @Test
  void evenCansAreOneOnTheGround() {
    for (double share : new double[] {0.01, 0.02, 0.05}) {
      List<CatchCan> even = cans(24, 0, 4);
      assertThat(SchedulingCoefficient.of(disc(12), even, values(even), share).value())
          .isCloseTo(1, within(1e-9));
    }
  }

  @Test
  void theDriestWindowLiesWhereTheDryCanStands() {
    List<CatchCan> cans = new ArrayList<>();
    for (int i = 0; i < 25; i++) {
      double x = 492 + 4 * (i % 5);
      double y = 892 + 4 * Math.floorDiv(i, 5);
      cans.add(can("c" + i, x, y, x == 504 && y == 896 ? 10 : 50));
    }
    Scheduling one = SchedulingCoefficient.of(disc(12), cans, values(cans), 0.01);
    // 1 % of 452 m²
    assertThat(one.sideM()).isCloseTo(Math.sqrt(0.01 * disc(12).getArea()), within(1e-9));
    assertThat(Math.hypot(one.x() - 504, one.y() - 896)).isLessThan(1);
    assertThat(one.value()).isGreaterThan(1.5).isLessThan(5);
    // a wider window dilutes it
    Scheduling five = SchedulingCoefficient.of(disc(12), cans, values(cans), 0.05);
    assertThat(five.value()).isLessThan(one.value()).isGreaterThan(1);
  }

  @Test
  void scaleAndOrderDoNotMatter() {
    List<CatchCan> cans = cans(24, 0.4, 6);
    Scheduling first = SchedulingCoefficient.of(disc(12), cans, values(cans), 0.02);
    double[] scaled = Arrays.stream(values(cans)).map(v -> 3 * v).toArray();
    assertThat(SchedulingCoefficient.of(disc(12), cans, scaled, 0.02).value())
        .isCloseTo(first.value(), within(1e-9));
    List<CatchCan> turned = new ArrayList<>(cans);
    Collections.reverse(turned);
    assertThat(SchedulingCoefficient.of(disc(12), turned, values(turned), 0.02)).isEqualTo(first);
  }

  @Test
  void groundTooNarrowForAWindow() {
    Geometry strip = FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(490, 590, 899, 901));
    List<CatchCan> cans = cans(24, 0.4, 6);
    // 5 % of 200 m² is a square of 3.2 m on a strip of 2 m
    assertThat(
            SchedulingCoefficient.of(strip, cans, values(cans), 0.05)
                .refusal()
                .orElseThrow()
                .reason())
        .contains("3.2 m");
  }
}
