package org.mottle.engine.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;

/** Filling, and the hollows it finds. */
class FloodTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  @Test
  void filled_ground_is_never_lower_and_has_no_pits() {
    for (long seed = 1; seed <= 20; seed++) {
      ElevationModel model = withVoids(Grounds.rough(60, 45, 0.5, seed), seed);
      PriorityFlood flood = PriorityFlood.of(model);
      int raised = 0;
      for (int i = 0; i < model.grid().size(); i++) {
        if (model.has(i)) {
          assertTrue(flood.filled(i) >= model.height(i), "seed " + seed);
          raised += flood.depth(i) > 0 ? 1 : 0;
          assertEquals(expected(flood, i), flood.filled(i), 0, "seed " + seed);
        } else {
          assertTrue(Double.isNaN(flood.filled(i)));
        }
      }
      assertTrue(raised > 20, "the ground must have hollows to fill");
    }
  }

  /** The defining equation: max(height, least filled neighbour), the height at an edge. */
  private static double expected(PriorityFlood flood, int i) {
    ElevationModel model = flood.model();
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 8; k++) {
      int next = model.neighbour(i / model.grid().columns(), i % model.grid().columns(), k);
      if (next < 0) {
        return model.height(i);
      }
      least = Math.min(least, flood.filled(next));
    }
    return Math.max(model.height(i), least);
  }

  private static ElevationModel withVoids(ElevationModel model, long seed) {
    return Grounds.map(model, i -> seed % 2 == 0 && i % 97 < 2 ? Double.NaN : model.height(i));
  }

  /** The equation alone is met by fuller ground too: compare with relaxation from above. */
  @Test
  void no_lower_water_would_do() {
    ElevationModel model = Grounds.rough(40, 30, 0.5, 9);
    PriorityFlood flood = PriorityFlood.of(model);
    double[] water = new double[1200];
    java.util.Arrays.fill(water, 1e9);
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int i = 0; i < 1200; i++) {
        double least = Double.POSITIVE_INFINITY;
        boolean edge = false;
        for (int k = 0; k < 8; k++) {
          int next = model.neighbour(i / 40, i % 40, k);
          edge |= next < 0;
          least = next < 0 ? least : Math.min(least, water[next]);
        }
        double to = edge ? model.height(i) : Math.max(model.height(i), least);
        if (to < water[i]) {
          water[i] = to;
          changed = true;
        }
      }
    }
    for (int i = 0; i < 1200; i++) {
      assertEquals(water[i], flood.filled(i), 0);
    }
  }

  @Test
  void filling_twice_adds_nothing() {
    PriorityFlood once = PriorityFlood.of(Grounds.rough(60, 60, 0.5, 4));
    PriorityFlood twice = PriorityFlood.of(once.filledModel());
    for (int i = 0; i < 3600; i++) {
      assertEquals(once.filled(i), twice.filled(i), 0);
    }
  }

  @Test
  void a_quarter_turn_and_a_constant_change_nothing_else() {
    ElevationModel model = Grounds.rough(50, 50, 0.5, 6);
    PriorityFlood flood = PriorityFlood.of(model);
    PriorityFlood turned = PriorityFlood.of(Grounds.turned(model));
    PriorityFlood higher = PriorityFlood.of(Grounds.map(model, i -> model.height(i) + 64));
    for (int i = 0; i < 2500; i++) {
      assertEquals(flood.filled(i), turned.filled(Grounds.turned(i, 50)), 0);
      assertEquals(flood.filled(i) + 64, higher.filled(i), 1e-12);
    }
  }

  @Test
  void every_cell_comes_after_the_one_its_water_goes_to() {
    PriorityFlood flood = PriorityFlood.of(Grounds.rough(70, 50, 0.5, 8));
    FlowDirection flow = FlowDirection.steepest(flood);
    int[] place = new int[3500];
    for (int i = 0; i < flood.count(); i++) {
      place[flood.cellInOrder(i)] = i;
      assertTrue(
          i == 0 || flood.filled(flood.cellInOrder(i)) >= flood.filled(flood.cellInOrder(i - 1)));
    }
    for (int cell = 0; cell < 3500; cell++) {
      int receiver = flow.receiver(cell);
      assertTrue(receiver < 0 || place[receiver] < place[cell]);
      boolean border = cell < 70 || cell >= 3430 || cell % 70 == 0 || cell % 70 == 69;
      assertTrue(receiver >= 0 || border, "water leaves at the border only");
    }
  }

  /**
   * A cone of slope s and depth h: with the cells of at least t depth, area pi ((h - t)/s)² and
   * volume pi/3 R² (h - t) + t pi R².
   */
  @Test
  void a_cone_holds_its_closed_form_volume() {
    double s = 0.05;
    double h = 0.2;
    ElevationModel cone =
        Grounds.of(200, 200, 0.1, (x, y) -> Math.min(5, 4.8 + s * Math.hypot(x - 10.03, y - 9.98)));
    List<Depression> found = Depressions.of(PriorityFlood.of(cone), 0.002, FACTORY);
    assertEquals(1, found.size());
    double t = 0.010;
    double radius = (h - t) / s;
    double area = Math.PI * radius * radius;
    Depression one = found.get(0);
    assertEquals(area, one.areaM2(), 0.01 * area);
    assertEquals(
        1000 * (area * (h - t) / 3 + t * area), one.volumeLitres(), 5e-3 * 1000 * area * h / 3);
    assertEquals(5, one.spillM(), 0);
    assertEquals(h, one.deepestM(), s * 0.08);
    assertEquals(one.areaM2(), one.outline().getArea(), 1e-9 * area);
    assertTrue(one.outline().isValid());
  }

  @Test
  void hollows_within_the_noise_or_too_small_are_not_told() {
    ElevationModel dish =
        Grounds.of(40, 40, 0.25, (x, y) -> Math.min(1, 0.97 + 0.01 * Math.hypot(x - 5, y - 5)));
    PriorityFlood flood = PriorityFlood.of(dish);
    assertEquals(1, Depressions.of(flood, 0, FACTORY).size());
    assertEquals(0, Depressions.of(flood, 0.016, FACTORY).size());
    assertEquals(0, Depressions.of(flood, 0.025, 1, FACTORY).size());
    assertEquals(0.032, Depressions.leastDepthM(0.016), 1e-15);
    assertEquals(0.010, Depressions.leastDepthM(0.003), 1e-15);
  }

  /** 20.011 - 20.001 is a little less than 0.010 in binary. */
  @Test
  void ten_millimetres_are_ten_millimetres() {
    ElevationModel pan =
        Grounds.of(12, 12, 0.5, (x, y) -> x > 2 && x < 4 && y > 2 && y < 4 ? 20.001 : 20.011);
    assertTrue(20.011 - 20.001 < 0.010);
    List<Depression> found = Depressions.of(PriorityFlood.of(pan), 0, FACTORY);
    assertEquals(1, found.size());
    assertEquals(4, found.get(0).areaM2(), 1e-12);
    assertEquals(40, found.get(0).volumeLitres(), 1e-9);
  }

  /** A ring ditch has a hole; two cells that meet at a corner are one hollow of two parts. */
  @Test
  void outlines_have_holes_and_parts() {
    ElevationModel ring =
        Grounds.of(
            21,
            21,
            1,
            (x, y) -> {
              double d = Math.max(Math.abs(x - 10.5), Math.abs(y - 10.5));
              return d > 3 && d < 6 ? 0 : 1;
            });
    Depression ditch = Depressions.of(PriorityFlood.of(ring), 0, FACTORY).get(0);
    assertEquals(121 - 49, ditch.areaM2());
    assertEquals(72, ditch.outline().getArea(), 1e-12);
    assertEquals(11 * 4 + 7 * 4, ditch.outline().getLength(), 1e-12);
    assertEquals(72_000, ditch.volumeLitres(), 1e-6);
    ElevationModel corner =
        Grounds.of(6, 6, 1, (x, y) -> (x == 2.5 && y == 2.5) || (x == 3.5 && y == 3.5) ? 0 : 1);
    List<Depression> both = Depressions.of(PriorityFlood.of(corner), 0, FACTORY);
    assertEquals(1, both.size());
    assertEquals(2, both.get(0).outline().getNumGeometries());
    assertTrue(both.get(0).outline().isValid());
  }

  @Test
  void outlines_of_rough_ground_are_valid_and_hold_the_area_of_their_cells() {
    PriorityFlood flood = PriorityFlood.of(Grounds.rough(120, 120, 0.5, 21));
    List<Depression> found = Depressions.of(flood, 0.001, 0, FACTORY);
    assertTrue(found.size() > 10);
    double sum = 0;
    for (Depression one : found) {
      assertTrue(one.outline().isValid());
      assertEquals(one.areaM2(), one.outline().getArea(), 1e-9);
      sum += one.volumeLitres();
    }
    double all = 0;
    for (int i = 0; i < 14_400; i++) {
      all += flood.depth(i) >= 0.001 ? flood.depth(i) * 250 : 0;
    }
    assertEquals(all, sum, 1e-6 * all);
  }
}
