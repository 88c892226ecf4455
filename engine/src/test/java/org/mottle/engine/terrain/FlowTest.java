package org.mottle.engine.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.Raster;

/** Where water runs, how much ground it comes from, and the wetness index. */
class FlowTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** The 4 x 4 plane 9 - i - j; cells counted by an independent program. */
  @Test
  void a_plane_to_the_corner_accumulates_as_the_textbook_has_it() {
    ElevationModel plane = Grounds.of(4, 4, 1, (x, y) -> 9 - (x - 0.5) - (3.5 - y));
    FlowDirection flow = FlowDirection.steepest(PriorityFlood.of(plane));
    ContributingArea area = ContributingArea.steepest(flow);
    double[] expected = {1, 1, 1, 1, 1, 2, 2, 3, 1, 2, 3, 6, 1, 3, 6, 16};
    for (int i = 0; i < 16; i++) {
      assertEquals(expected[i], area.areaM2(i), 0, "cell " + i);
    }
    assertEquals(3, flow.direction(5));
    assertEquals(-1, flow.direction(15));
  }

  /** ln(a / tan beta), the four pairs of the catalogue. */
  @Test
  void the_wetness_index_has_its_published_form() {
    assertEquals(3.912023005428146, WetnessIndex.of(1, 0.02), 1e-14);
    assertEquals(6.437751649736401, WetnessIndex.of(12.5, 0.02), 1e-14);
    assertEquals(9.210340371976184, WetnessIndex.of(50, 0.005), 1e-14);
    assertEquals(8.804875263868018, WetnessIndex.of(200, 0.03), 1e-14);
    assertEquals(WetnessIndex.of(50, 0.001), WetnessIndex.of(50, 0), 0);
    assertThrows(IllegalArgumentException.class, () -> WetnessIndex.of(0, 0.1));
  }

  @Test
  void all_ground_leaves_somewhere() {
    for (long seed = 1; seed <= 10; seed++) {
      ElevationModel rough = Grounds.rough(60, 50, 0.5, seed);
      ElevationModel model = Grounds.map(rough, i -> i % 501 == 7 ? Double.NaN : rough.height(i));
      PriorityFlood flood = PriorityFlood.of(model);
      double total = (3000 - model.voids()) * 0.25;
      assertEquals(
          total, ContributingArea.steepest(FlowDirection.steepest(flood)).leavingM2(), 1e-9);
      assertEquals(total, ContributingArea.multiple(flood).leavingM2(), 1e-9);
    }
  }

  /** On a plane that falls due south every column has its own ground: rows above and its own. */
  @Test
  void a_plane_due_south_gathers_by_rows_inside() {
    ElevationModel plane = Grounds.of(81, 12, 0.5, (x, y) -> 0.03 * y);
    ContributingArea single =
        ContributingArea.steepest(FlowDirection.steepest(PriorityFlood.of(plane)));
    ContributingArea shared = ContributingArea.multiple(PriorityFlood.of(plane));
    for (int row = 0; row < 12; row++) {
      int middle = row * 81 + 40;
      assertEquals((row + 1) * 0.25, single.areaM2(middle), 1e-12);
      assertEquals((row + 1) * 0.25, shared.areaM2(middle), 1e-12);
      assertEquals((row + 1) * 0.5, single.specificM(middle), 1e-12);
    }
  }

  /** Shares of a cell whose lower neighbours are one straight and one diagonal, by hand. */
  @Test
  void shares_follow_the_slope_to_the_power_of_1_1() {
    ElevationModel nine =
        Grounds.rows(2, new double[] {9, 9, 9}, new double[] {9, 5, 4}, new double[] {9, 9, 2});
    ContributingArea area = ContributingArea.multiple(PriorityFlood.of(nine));
    double straight = Math.pow(1 / 2.0, 1.1);
    double diagonal = Math.pow(3 / (2 * Math.sqrt(2)), 1.1);
    double toEast = straight / (straight + diagonal);
    double middle = area.areaM2(4);
    // the cell to the east also gets its share of the two to its north, and of the middle
    ContributingArea without =
        ContributingArea.multiple(
            PriorityFlood.of(
                Grounds.rows(
                    2,
                    new double[] {9, 9, 9},
                    new double[] {9, 5, 4.999999999},
                    new double[] {9, 9, 2})));
    assertTrue(middle > 4);
    assertEquals(expectedEast(middle, toEast), area.areaM2(5), 1e-12);
    assertTrue(without.areaM2(5) < area.areaM2(5));
  }

  /** North side: (0,1) shares with middle and east; (0,2) gives east and middle. */
  private static double expectedEast(double middle, double toEast) {
    double upToEast = Math.pow(5 / (2 * Math.sqrt(2)), 1.1);
    double upToMiddle = Math.pow(4 / 2.0, 1.1);
    double cornerToEast = Math.pow(5 / 2.0, 1.1);
    double cornerToMiddle = Math.pow(4 / (2 * Math.sqrt(2)), 1.1);
    // (2,1) falls to the middle, to (2,2) and to the east
    double lowToEast = Math.pow(5 / (2 * Math.sqrt(2)), 1.1);
    double lowToMiddle = Math.pow(4 / 2.0, 1.1);
    double lowToCorner = Math.pow(7 / 2.0, 1.1);
    return 4
        + 4 * upToEast / (upToEast + upToMiddle)
        + 4 * cornerToEast / (cornerToEast + cornerToMiddle)
        + 4 * lowToEast / (lowToEast + lowToMiddle + lowToCorner)
        + middle * toEast;
  }

  @Test
  void a_quarter_turn_turns_the_areas() {
    ElevationModel model = Grounds.of(40, 40, 0.5, FlowTest::ridges);
    PriorityFlood flood = PriorityFlood.of(model);
    PriorityFlood turned = PriorityFlood.of(Grounds.turned(model));
    ContributingArea shared = ContributingArea.multiple(flood);
    ContributingArea single = ContributingArea.steepest(FlowDirection.steepest(flood));
    ContributingArea sharedTurned = ContributingArea.multiple(turned);
    ContributingArea singleTurned = ContributingArea.steepest(FlowDirection.steepest(turned));
    for (int i = 0; i < 1600; i++) {
      int to = Grounds.turned(i, 40);
      assertEquals(shared.areaM2(i), sharedTurned.areaM2(to), 1e-9);
      assertEquals(single.areaM2(i), singleTurned.areaM2(to), 1e-9);
    }
  }

  /** Uneven but without hollows: no ties that a turn could settle another way. */
  private static double ridges(double x, double y) {
    return 0.05 * x + 0.0713 * y + 0.004 * Math.sin(1.7 * x + 0.3 * y) + 0.0003 * x * y;
  }

  @Test
  void a_constant_changes_no_direction() {
    ElevationModel model = Grounds.rough(60, 60, 0.5, 17);
    // heights in 1/1024 m, so that the sum is exact
    ElevationModel rounded = Grounds.map(model, i -> Math.rint(model.height(i) * 1024) / 1024);
    FlowDirection flow = FlowDirection.steepest(PriorityFlood.of(rounded));
    FlowDirection higher =
        FlowDirection.steepest(
            PriorityFlood.of(Grounds.map(rounded, i -> rounded.height(i) + 128)));
    for (int i = 0; i < 3600; i++) {
      assertEquals(flow.direction(i), higher.direction(i));
    }
  }

  @Test
  void the_index_is_highest_where_a_trough_gathers() {
    ElevationModel trough =
        Grounds.of(41, 41, 0.5, (x, y) -> 0.02 * y + 0.01 * Math.abs(x - 10.25));
    Raster index =
        WetnessIndex.of(
            ContributingArea.multiple(PriorityFlood.of(trough)), GroundSlope.of(trough));
    int row = 35 * 41;
    for (int column = 1; column < 40; column++) {
      assertTrue(index.value(row + 20) >= index.value(row + column));
    }
    assertTrue(Double.isNaN(index.value(0)));
  }

  @Test
  void a_line_runs_down_a_plane_to_the_edge() {
    ElevationModel plane = Grounds.of(20, 20, 0.5, (x, y) -> 0.03 * y);
    FlowDirection flow = FlowDirection.steepest(PriorityFlood.of(plane));
    FlowLine line = FlowLine.from(flow, 5.1, 8.1, 0.01, FACTORY);
    assertEquals(FlowLine.End.EDGE, line.end());
    assertEquals(8, line.line().getLength(), 1e-12);
    assertEquals(0.03 * 8, line.dropM(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> FlowLine.from(flow, -1, 5, 0.01, FACTORY));
  }

  @Test
  void a_line_ends_in_the_hollow_it_meets_and_one_from_it_at_the_spill() {
    ElevationModel dished =
        Grounds.of(
            60, 60, 0.5, (x, y) -> 0.03 * y - 0.4 * Math.exp(-(sq(x - 15) + sq(y - 15)) / 8));
    PriorityFlood flood = PriorityFlood.of(dished);
    FlowDirection flow = FlowDirection.steepest(flood);
    FlowLine into = FlowLine.from(flow, 15.2, 28, 0.01, FACTORY);
    assertEquals(FlowLine.End.HOLLOW, into.end());
    assertTrue(into.dropM() > 0.1);
    FlowLine out = FlowLine.from(flow, 15.2, 14.8, 0.01, FACTORY);
    assertEquals(FlowLine.End.SPILL, out.end());
    Depression hollow = Depressions.of(flood, 0, FACTORY).get(0);
    int deepest = hollow.deepestCell();
    FlowLine fromDeepest =
        FlowLine.from(
            flow, dished.grid().x(deepest % 60), dished.grid().y(deepest / 60), 0.01, FACTORY);
    assertEquals(-hollow.deepestM(), fromDeepest.dropM(), 1e-12);
  }

  private static double sq(double v) {
    return v * v;
  }
}
