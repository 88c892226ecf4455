package org.mottle.engine.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Smoothing and the noise it is chosen by. */
class SmoothingTest {

  @Test
  void level_ground_stays_level_to_the_edge_and_round_voids() {
    ElevationModel level = Grounds.of(20, 15, 0.5, (x, y) -> x > 4 && x < 5 ? Double.NaN : 31.7);
    ElevationModel smooth = Smoothing.gaussian(level, 1.3);
    for (int i = 0; i < 300; i++) {
      assertEquals(level.height(i), smooth.height(i), 1e-11);
    }
    assertEquals(level.voids(), smooth.voids());
  }

  @Test
  void a_plane_is_unchanged_four_sigma_from_the_edge() {
    ElevationModel plane = Grounds.of(41, 41, 0.5, (x, y) -> 0.02 * x - 0.03 * y);
    ElevationModel smooth = Smoothing.gaussian(plane, 1);
    for (int row = 8; row < 33; row++) {
      for (int column = 8; column < 33; column++) {
        assertEquals(plane.height(row * 41 + column), smooth.height(row * 41 + column), 1e-12);
      }
    }
    assertTrue(Math.abs(plane.height(20 * 41) - smooth.height(20 * 41)) > 0.005);
  }

  /** z = x²/2 is raised by sigma²/2: the variance of the weights. */
  @Test
  void a_parabola_is_raised_by_half_the_variance() {
    ElevationModel smooth =
        Smoothing.gaussian(Grounds.of(101, 3, 0.1, (x, y) -> (x - 5) * (x - 5) / 2), 0.5);
    double at = smooth.height(101 + 50) - Math.pow(smooth.grid().x(50) - 5, 2) / 2;
    assertEquals(0.125, at, 0.125 * 2e-3);
  }

  @Test
  void sigma_nought_changes_nothing_and_adding_a_constant_adds_it() {
    ElevationModel model = Grounds.rough(30, 20, 0.5, 5);
    assertEquals(model.height(77), Smoothing.gaussian(model, 0).height(77));
    ElevationModel smooth = Smoothing.gaussian(model, 0.8);
    ElevationModel higher = Smoothing.gaussian(Grounds.map(model, i -> model.height(i) + 100), 0.8);
    for (int i = 0; i < 600; i++) {
      assertEquals(smooth.height(i) + 100, higher.height(i), 1e-11);
    }
  }

  /** White noise of 8 mm on curved ground with a bank: the robust SD within 3 %. */
  @Test
  void the_noise_of_a_model_is_found_whatever_the_ground() {
    Random random = new Random(11);
    ElevationModel noisy =
        Grounds.of(
            300,
            300,
            0.25,
            (x, y) ->
                0.5 * Math.sin(x / 9)
                    + 0.002 * x * y
                    + (x + y > 40 && x + y < 41 ? 1.5 : 0)
                    + 0.008 * random.nextGaussian());
    assertEquals(0.008, ElevationNoise.sdM(noisy), 0.03 * 0.008);
    ElevationModel none = Grounds.of(50, 50, 0.25, (x, y) -> 0.01 * x * x + 0.3 * y - x * y / 50);
    assertEquals(0, ElevationNoise.sdM(none), 1e-12);
    assertTrue(Double.isNaN(ElevationNoise.sdM(Grounds.of(2, 9, 1, (x, y) -> 1))));
  }

  @Test
  void smoothing_by_the_noise_leaves_what_was_wanted() {
    Random random = new Random(12);
    ElevationModel noise = Grounds.of(400, 400, 0.25, (x, y) -> 0.008 * random.nextGaussian());
    double sigma = Smoothing.sigmaM(0.25, 0.008, 0.001);
    ElevationModel smooth = Smoothing.gaussian(noise, sigma);
    double sum = 0;
    int n = 0;
    for (int row = 20; row < 380; row++) {
      for (int column = 20; column < 380; column++, n++) {
        sum += Math.pow(smooth.height(row * 400 + column), 2);
      }
    }
    assertEquals(0.001, Math.sqrt(sum / n), 0.00005);
    assertEquals(0, Smoothing.sigmaM(0.25, 0.001, 0.002));
  }
}
