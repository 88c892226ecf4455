package org.mottle.engine.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;

/** What holds of the plan of any green by any design. */
class PlanLawsTest {
  private static final int SEEDS = 6;

  static Stream<Design> designs() {
    return Stream.of(
        new Design.Transect(Double.NaN),
        new Design.Transect(30),
        new Design.Zigzag(),
        new Design.SquareGrid(),
        new Design.TriangularGrid(),
        new Design.SpatialCoverage(),
        new Design.StratifiedRandom(),
        new Design.SpatiallyBalanced());
  }

  private static PlanSettings settings(long seed) {
    return new PlanSettings(14, 1.0, 2, 0.5, 3, true, seed);
  }

  private static StationPlan plan(Design design, PlanSettings settings, Green green) {
    PlanOutcome outcome = new StationPlanner(design, settings).plan(green);
    assertThat(outcome)
        .as("%s of %s", design.label(), green.id())
        .isInstanceOf(PlanOutcome.Planned.class);
    return ((PlanOutcome.Planned) outcome).plan();
  }

  private static double fromEdge(PlannedStation s, Geometry outline) {
    return outline
        .getBoundary()
        .distance(OddGround.FACTORY.createPoint(new Coordinate(s.x(), s.y())));
  }

  @ParameterizedTest
  @MethodSource("designs")
  void every_station_is_on_the_green_and_no_nearer_to_an_edge_than_the_inset(Design design) {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Green green = OddGround.green(seed);
      for (PlannedStation s : plan(design, settings(seed), green).stations()) {
        String what = design.label() + ", seed " + seed + ", station " + s.id();
        assertThat(
                green
                    .outline()
                    .contains(OddGround.FACTORY.createPoint(new Coordinate(s.x(), s.y()))))
            .as(what)
            .isTrue();
        // arcs of the inset are drawn as chords, 8 to the quarter: 1 - cos(π/32) off at most
        assertThat(fromEdge(s, green.outline())).as(what).isGreaterThan(1 - 0.005);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("designs")
  void plans_hold_what_was_asked_for_numbered_in_walking_order(Design design) {
    for (long seed = 1; seed <= SEEDS; seed++) {
      StationPlan plan = plan(design, settings(seed), OddGround.green(seed));
      String what = design.label() + ", seed " + seed;
      List<PlannedStation> walk = plan.stations().subList(1, plan.stations().size());
      assertThat(plan.stations().get(0).id()).as(what).isEqualTo("C1");
      assertThat(count(plan, Reading.Role.CONTROL)).as(what).isEqualTo(1);
      assertThat(count(plan, Reading.Role.PLAN)).as(what).isEqualTo(14);
      assertThat(count(plan, Reading.Role.PAIR)).as(what).isEqualTo(2);
      assertThat(walk.stream().filter(s -> s.insertions() == 2).count()).as(what).isEqualTo(3);
      for (int i = 0; i < walk.size(); i++) {
        PlannedStation s = walk.get(i);
        assertThat(s.id()).as(what).isEqualTo(String.valueOf(i + 1));
        if (s.role() == Reading.Role.PAIR) {
          PlannedStation host = walk.get(i - 1);
          assertThat(host.role()).as(what).isEqualTo(Reading.Role.PLAN);
          assertThat(Math.hypot(s.x() - host.x(), s.y() - host.y()))
              .as(what)
              .isCloseTo(0.5, within(1e-9));
        }
      }
      assertThat(new StationPlan("", "", walk).walkM()).as(what).isEqualTo(plan.walkM());
    }
  }

  private static long count(StationPlan plan, Reading.Role role) {
    return plan.stations().stream().filter(s -> s.role() == role).count();
  }

  @ParameterizedTest
  @MethodSource("designs")
  void a_plan_follows_its_seed_and_its_green_alone(Design design) {
    Green green = OddGround.green(1);
    StationPlanner planner = new StationPlanner(design, settings(5));
    PlanOutcome first = planner.plan(green);
    planner.plan(OddGround.green(2));
    assertThat(planner.plan(green)).isEqualTo(first);
    Set<StationPlan> different = new HashSet<>();
    for (long seed = 1; seed <= 4; seed++) {
      different.add(plan(design, settings(seed << 33), green));
    }
    assertThat(different).as("%s: close pairs at least follow the seed", design.label()).hasSize(4);
    Green same = Green.of("another", green.outline());
    assertThat(plan(design, settings(5), same).stations())
        .as(design.label())
        .isNotEqualTo(plan(design, settings(5), green).stations());
  }

  @Test
  void a_green_too_narrow_is_refused_with_the_inset_that_fits() {
    Green strip = Green.of("strip", OddGround.FACTORY.toGeometry(new Envelope(0, 40, 0, 3)));
    Refusal why =
        refusal(new Design.SpatialCoverage(), new PlanSettings(5, 2, 0, 0.5, 0, false, 1), strip);
    assertThat(why.reason()).contains("3.00 m wide").contains("inset of 2.00 m");
    assertThat(why.remedy()).isEqualTo("make the inset less than 1.50 m");
    plan(
        new Design.SpatialCoverage(),
        new PlanSettings(5, 1.45, 0, 0.5, 0, false, 1),
        Green.of("strip", OddGround.FACTORY.toGeometry(new Envelope(0, 400, 0, 3))));
  }

  @Test
  void more_stations_than_fit_are_refused_with_the_number_that_fits() {
    Green green = Green.of("small", OddGround.FACTORY.toGeometry(new Envelope(0, 8, 0, 7)));
    PlanSettings bare = new PlanSettings(31, 1, 0, 0.5, 0, false, 1);
    Refusal why = refusal(new Design.SpatialCoverage(), bare, green);
    assertThat(why.remedy()).isEqualTo("plan at most 30 stations");
    assertThat(plan(new Design.SpatialCoverage(), bare.withStations(30), green).stations())
        .hasSize(30);
  }

  @Test
  void what_is_not_on_the_green_is_refused_with_a_remedy() {
    Green green = OddGround.green(1);
    Design far = new Design.Interest(List.of(OddGround.disc(0, 0, 5)));
    assertThat(refusal(far, settings(1), green).remedy()).isNotEmpty();
    StationPlan other = plan(new Design.Zigzag(), settings(1), OddGround.green(2));
    for (Design design :
        List.of(new Design.Repeat(List.of(other)), new Design.Infill(List.of(other)))) {
      assertThat(refusal(design, settings(1), green).reason()).contains("no earlier plan");
    }
  }

  private static Refusal refusal(Design design, PlanSettings settings, Green green) {
    return ((PlanOutcome.NotPlanned) new StationPlanner(design, settings).plan(green)).why();
  }

  @Test
  void a_repeat_names_the_stations_that_are_no_longer_on_the_green() {
    Green green = OddGround.green(1);
    StationPlan first = plan(new Design.SpatialCoverage(), settings(1), green);
    PlannedStation gone = first.station("5").orElseThrow();
    Green dug =
        Green.of(green.id(), green.outline().difference(OddGround.disc(gone.x(), gone.y(), 0.3)));
    PlanOutcome.Planned again =
        (PlanOutcome.Planned)
            new StationPlanner(new Design.Repeat(List.of(first)), settings(9)).plan(dug);
    assertThat(again.note()).isEqualTo("no longer on the green: 5");
    assertThat(again.plan().stations())
        .isEqualTo(first.stations().stream().filter(s -> s != gone).toList());
  }

  @Test
  void points_and_areas_of_interest_are_read_where_they_are() {
    Green green = Green.of("7", OddGround.FACTORY.toGeometry(new Envelope(0, 30, 0, 20)));
    Geometry point = OddGround.FACTORY.createPoint(new Coordinate(3, 4));
    Geometry area = OddGround.disc(20, 10, 4);
    StationPlan plan =
        plan(
            new Design.Interest(List.of(point, area)),
            new PlanSettings(6, 1, 2, 0.5, 0, false, 1),
            green);
    assertThat(plan.stations()).hasSize(6);
    assertThat(plan.stations())
        .allMatch(s -> s.role() == Reading.Role.POINT_OF_INTEREST)
        .filteredOn(s -> s.x() == 3 && s.y() == 4)
        .hasSize(1);
    assertThat(plan.stations()).filteredOn(s -> Math.hypot(s.x() - 20, s.y() - 10) < 4).hasSize(5);
  }
}
