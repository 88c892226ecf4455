package org.mottle.engine.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

class StationPlannerTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Green RECTANGLE =
      Green.of("7", FACTORY.toGeometry(new Envelope(0, 30, 0, 20)));
  private static final PlanSettings BARE = new PlanSettings(16, 1, 0, 0.5, 0, false, 3);

  private static StationPlan plan(Design design, PlanSettings settings) {
    return ((PlanOutcome.Planned) new StationPlanner(design, settings).plan(RECTANGLE)).plan();
  }

  @Test
  void transect_runs_from_end_to_end_in_equal_steps() {
    StationPlan plan = plan(new Design.Transect(Double.NaN), BARE.withStations(8));
    for (int i = 0; i < 8; i++) {
      assertThat(plan.stations().get(i).x()).isCloseTo(1 + 4 * i, within(1e-9));
      assertThat(plan.stations().get(i).y()).isCloseTo(10, within(1e-9));
    }
    StationPlan north = plan(new Design.Transect(0), BARE.withStations(4));
    assertThat(north.stations().get(1).y()).isCloseTo(7, within(1e-9));
    assertThat(north.stations().get(1).x()).isCloseTo(15, within(1e-9));
  }

  /** Inset rectangle 28 m x 18 m: legs of 7 m along and 18 m across. */
  @Test
  void w_has_a_station_at_every_corner_of_nine() {
    StationPlan plan = plan(new Design.Zigzag(), BARE.withStations(9));
    double[] y = {19, 10, 1, 10, 19, 10, 1, 10, 19};
    for (int i = 0; i < 9; i++) {
      assertThat(plan.stations().get(i).x()).isCloseTo(1 + 3.5 * i, within(1e-9));
      assertThat(plan.stations().get(i).y()).isCloseTo(y[i], within(1e-9));
    }
    assertThat(plan.walkM()).isCloseTo(4 * Math.hypot(7, 18), within(1e-9));
  }

  @Test
  void grid_has_its_spacing() {
    StationPlan plan = plan(new Design.SquareGrid(), BARE);
    assertThat(least(plan)).isCloseTo(Math.sqrt(28 * 18 / 16.0), within(0.25 * 5.6));
    StationPlan triangles = plan(new Design.TriangularGrid(), BARE);
    assertThat(least(triangles)).isCloseTo(Math.sqrt(2 * 504 / (Math.sqrt(3) * 16)), within(1.5));
  }

  private static double least(StationPlan plan) {
    double least = Double.POSITIVE_INFINITY;
    for (PlannedStation a : plan.stations()) {
      for (PlannedStation b : plan.stations()) {
        least = a == b ? least : Math.min(least, Math.hypot(a.x() - b.x(), a.y() - b.y()));
      }
    }
    return least;
  }

  @Test
  void every_design_gives_what_was_asked_for() {
    for (Design design :
        List.of(
            new Design.Transect(Double.NaN),
            new Design.Zigzag(),
            new Design.SquareGrid(),
            new Design.TriangularGrid(),
            new Design.SpatialCoverage(),
            new Design.StratifiedRandom(),
            new Design.SpatiallyBalanced())) {
      StationPlan plan = plan(design, PlanSettings.DEFAULT);
      assertThat(plan.stations()).as(design.label()).hasSize(19);
      assertThat(plan.stations().get(0).role()).isEqualTo(Reading.Role.CONTROL);
      assertThat(plan.insertions()).isEqualTo(5 + 16 + 3 + 2);
      for (int i = 1; i < 19; i++) {
        PlannedStation s = plan.stations().get(i);
        assertThat(s.id()).isEqualTo(String.valueOf(i));
        assertThat(s.x()).isBetween(1 - 1e-9, 29 + 1e-9);
        assertThat(s.y()).isBetween(1 - 1e-9, 19 + 1e-9);
        if (s.role() == Reading.Role.PAIR) {
          PlannedStation host = plan.stations().get(i - 1);
          assertThat(Math.hypot(s.x() - host.x(), s.y() - host.y())).isCloseTo(0.5, within(1e-9));
        }
      }
      assertThat(plan(design, PlanSettings.DEFAULT)).isEqualTo(plan);
    }
  }

  @Test
  void coverage_is_close_to_a_long_run_and_strata_are_equal() {
    Ground ground = new Ground(RECTANGLE.outline().buffer(-1));
    Coverage coverage = new Coverage(ground, List.of());
    List<Coordinate> places = coverage.places(16, new Well19937c(1));
    List<Coordinate> longRun = coverage.places(16, 300, new Well19937c(2));
    assertThat(coverage.meanSquaredDistance(places))
        .isLessThanOrEqualTo(1.03 * coverage.meanSquaredDistance(longRun));
    for (double area : new Strata(ground, 16, new Well19937c(3)).areasM2()) {
      assertThat(area).isCloseTo(504 / 16.0, within(0.02 * 504 / 16));
    }
  }

  @Test
  void refuses_what_cannot_be() {
    assertRefused(new Design.SpatialCoverage(), new PlanSettings(16, 11, 0, 0.5, 0, false, 3));
    assertRefused(new Design.SpatialCoverage(), BARE.withStations(505));
    assertRefused(new Design.Repeat(List.of()), BARE);
    assertRefused(new Design.Interest(List.of(FACTORY.createPoint(new Coordinate(50, 50)))), BARE);
  }

  private static void assertRefused(Design design, PlanSettings settings) {
    assertThat(new StationPlanner(design, settings).plan(RECTANGLE))
        .isInstanceOf(PlanOutcome.NotPlanned.class);
  }

  @Test
  void infill_keeps_away_from_the_earlier_plan_and_numbers_on() {
    StationPlan first = plan(new Design.SpatialCoverage(), BARE);
    StationPlan more = plan(new Design.Infill(List.of(first)), BARE.withStations(6));
    assertThat(more.stations()).extracting(PlannedStation::id).startsWith("17").hasSize(6);
    for (PlannedStation s : more.stations()) {
      assertThat(s.role()).isEqualTo(Reading.Role.INFILL);
      for (PlannedStation t : first.stations()) {
        assertThat(Math.hypot(s.x() - t.x(), s.y() - t.y())).isGreaterThan(1.5);
      }
    }
    assertThat(plan(new Design.Repeat(List.of(first)), BARE).stations())
        .isEqualTo(first.stations());
  }
}
