package org.mottle.engine.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Slope, aspect and curvature: GDAL's numbers and exact surfaces. */
class SlopeCurvatureTest {

  /** GDAL's gdaldem on these nine heights, 5 m cells (float32); slopes from the formula itself. */
  @Test
  void nine_heights_give_the_slope_and_aspect_of_gdal() {
    GroundSlope steep =
        GroundSlope.of(
            Grounds.rows(
                5, new double[] {50, 45, 50}, new double[] {30, 30, 30}, new double[] {8, 10, 10}));
    assertEquals(75.25765769, steep.degrees(4), 5e-9);
    assertEquals(380.0328933, steep.percent(4), 5e-8);
    assertEquals(180.7538452, steep.aspect(4), 5e-6);
    GroundSlope east =
        GroundSlope.of(
            Grounds.rows(
                5,
                new double[] {101, 92, 85},
                new double[] {101, 92, 85},
                new double[] {101, 91, 84}));
    assertEquals(58.41970092, east.degrees(4), 5e-9);
    assertEquals(92.64254529, east.aspect(4), 5e-9);
  }

  /** dem8.asc and what GDAL 3.6 gdaldem -alg Horn made of it; float32: 1e-4 and 4e-3 degrees. */
  @Test
  void a_small_model_gives_the_slopes_and_aspects_of_gdal() {
    double[][] heights = {
      {10.0400, 10.0790, 10.1121, 10.1349, 10.1455, 10.1449, 10.1371, 10.1275},
      {10.0214, 10.0604, 10.0935, 10.1163, 10.1269, 10.1264, 10.1185, 10.1089},
      {9.9894, 10.0284, 10.0615, 10.0843, 10.0949, 10.0943, 10.0865, 10.0769},
      {9.9534, 9.9923, 10.0254, 10.0482, 10.0588, 10.0583, 10.0504, 10.0408},
      {9.9244, 9.9634, 9.9965, 10.0193, 10.0299, 10.0294, 10.0215, 10.0119},
      {9.9107, 9.9497, 9.9828, 10.0056, 10.0162, 10.0157, 10.0078, 9.9982},
      {9.9139, 9.9528, 9.9859, 10.0087, 10.0193, 10.0188, 10.0109, 10.0013},
      {9.9282, 9.9671, 10.0002, 10.0230, 10.0336, 10.0331, 10.0252, 10.0156}
    };
    double[][] degrees = {
      {5.033829689, 4.311895847, 3.469624519, 2.953180313, 2.936272860, 3.063808203},
      {5.661882877, 5.035005569, 4.337571621, 3.937887669, 3.925259113, 4.021289825},
      {5.542452335, 4.900018692, 4.179640293, 3.761913538, 3.747056246, 3.849325657},
      {4.786552429, 4.020260334, 3.098540068, 2.506795645, 2.486218214, 2.636842251},
      {4.166442871, 3.256377220, 2.007019043, 0.838807940, 0.774902940, 1.172076464},
      {4.238058090, 3.350574493, 2.156746626, 1.152497649, 1.106914043, 1.413615227}
    };
    double[][] aspects = {
      {234.938552856, 227.849304199, 213.427856445, 191.233489990, 170.574462891, 160.972320557},
      {226.634704590, 219.380737305, 206.126251221, 188.394805908, 172.968231201, 165.627441406},
      {227.944976807, 220.694625854, 207.197052002, 188.814453125, 172.630966187, 164.946594238},
      {239.399734497, 232.689285278, 218.098434448, 193.338775635, 168.845306396, 157.667175293},
      {261.652770996, 259.262634277, 252.391479492, 223.619674683, 141.602020264, 121.201934814},
      {283.600585938, 287.290588379, 297.517639160, 329.866333008, 25.772048950, 45.162834167}
    };
    GroundSlope slope = GroundSlope.of(Grounds.rows(0.5, heights));
    for (int row = 0; row < 8; row++) {
      for (int column = 0; column < 8; column++) {
        int at = row * 8 + column;
        if (row == 0 || column == 0 || row == 7 || column == 7) {
          assertTrue(Double.isNaN(slope.ratio(at)), "GDAL has no value at the border");
        } else {
          assertEquals(degrees[row - 1][column - 1], slope.degrees(at), 1e-4);
          assertEquals(aspects[row - 1][column - 1], slope.aspect(at), 4e-3);
        }
      }
    }
  }

  @Test
  void a_plane_has_its_slope_and_aspect_everywhere_and_no_curvature() {
    for (int bearing = 0; bearing < 360; bearing += 15) {
      double gx = -0.04 * Math.sin(Math.toRadians(bearing));
      double gy = -0.04 * Math.cos(Math.toRadians(bearing));
      ElevationModel plane = Grounds.of(9, 7, 0.25, (x, y) -> gx * x + gy * y);
      GroundSlope slope = GroundSlope.of(plane);
      for (int at = 10; at < 17; at++) {
        assertEquals(4, slope.percent(at), 1e-10);
        assertEquals(0, Math.IEEEremainder(bearing - slope.aspect(at), 360), 1e-9);
        assertEquals(0, GroundCurvature.at(plane, at).profile(), 1e-10);
        assertEquals(0, GroundCurvature.at(plane, at).plan(), 1e-10);
      }
    }
  }

  @Test
  void level_ground_has_no_aspect() {
    GroundSlope slope = GroundSlope.of(Grounds.of(3, 3, 1, (x, y) -> 7));
    assertEquals(0, slope.ratio(4));
    assertTrue(Double.isNaN(slope.aspect(4)));
  }

  /** z = k (x² + y²) / 2 has the second derivative k in every direction at every place. */
  @Test
  void a_bowl_is_hollow_by_k_along_and_across() {
    for (double k : new double[] {0.08, -0.03}) {
      ElevationModel bowl =
          Grounds.of(11, 11, 0.5, (x, y) -> k / 2 * (sq(x - 2.75) + sq(y - 2.75)));
      for (int row = 1; row < 10; row++) {
        for (int column = 1; column < 10; column++) {
          GroundCurvature c = GroundCurvature.at(bowl, row * 11 + column);
          assertEquals(k, c.profile(), 1e-12);
          assertEquals(k, c.plan(), 1e-12);
        }
      }
    }
  }

  /** z = p v²/2 + s v across-slope trough: fall along u, hollow across it only. */
  @Test
  void a_trough_gathers_across_its_fall_and_is_straight_along_it() {
    double turn = Math.toRadians(35);
    ElevationModel trough =
        Grounds.of(
            21,
            21,
            0.5,
            (x, y) -> {
              double u = (x - 5.25) * Math.cos(turn) + (y - 5.25) * Math.sin(turn);
              double v = -(x - 5.25) * Math.sin(turn) + (y - 5.25) * Math.cos(turn);
              return -0.03 * u + 0.02 * v * v / 2;
            });
    GroundCurvature middle = GroundCurvature.at(trough, 10 * 21 + 10);
    assertEquals(0.02, middle.plan(), 1e-12);
    assertEquals(0, middle.profile(), 1e-12);
    assertEquals(0.02, middle.sum(), 1e-12);
  }

  @Test
  void a_quarter_turn_turns_the_aspect_and_keeps_the_rest() {
    ElevationModel model = Grounds.rough(40, 40, 0.5, 3);
    ElevationModel turned = Grounds.turned(model);
    GroundSlope slope = GroundSlope.of(model);
    GroundSlope other = GroundSlope.of(turned);
    for (int at = 0; at < 1600; at++) {
      int to = Grounds.turned(at, 40);
      assertEquals(slope.ratio(at), other.ratio(to), 1e-12);
      assertEquals(
          GroundCurvature.at(model, at).plan(), GroundCurvature.at(turned, to).plan(), 1e-9);
      if (slope.ratio(at) > 0) {
        assertEquals(0, Math.IEEEremainder(slope.aspect(at) + 90 - other.aspect(to), 360), 1e-8);
      }
    }
  }

  @Test
  void a_void_leaves_its_neighbours_without_slope_and_curvature() {
    ElevationModel holed =
        Grounds.map(Grounds.rough(7, 7, 1, 1), i -> i == 24 ? Double.NaN : 0.01 * i);
    GroundSlope slope = GroundSlope.of(holed);
    assertTrue(Double.isNaN(slope.ratio(24)) && Double.isNaN(slope.ratio(16)));
    assertTrue(Double.isNaN(slope.ratio(23)) && Double.isNaN(GroundCurvature.at(holed, 23).plan()));
    assertEquals(1, holed.voids());
  }

  @Test
  void a_model_without_heights_or_with_an_infinite_one_is_refused() {
    String none =
        assertThrows(
                IllegalArgumentException.class, () -> Grounds.of(2, 2, 1, (x, y) -> Double.NaN))
            .getMessage();
    assertTrue(none.contains("4 cells are voids"), none);
    String infinite =
        assertThrows(
                IllegalArgumentException.class, () -> Grounds.of(2, 2, 1, (x, y) -> 1 / (x - 0.5)))
            .getMessage();
    assertTrue(infinite.contains("row 0, column 0"), infinite);
  }

  private static double sq(double v) {
    return v * v;
  }
}
