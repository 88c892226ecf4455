package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.InventedGround;

class InscribedCircleTest {

  @Test
  void agreesWithJts() {
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      Polygon polygon =
          InventedGround.green(random, 500_000, 5_316_300, 1 + seed, 80, seed % 2 == 0);
      double jts = MaximumInscribedCircle.getRadiusLine(polygon, 0.001).getLength();
      double radius = InscribedCircle.radius(polygon, 0.005);
      assertThat(radius).as("seed %d", seed).isCloseTo(jts, within(0.006));
    }
  }

  @Test
  void knowsSimpleShapes() {
    Polygon strip = InventedGround.rectangle(200_000, 5_600_000, 200_100, 5_600_000.8);
    assertThat(InscribedCircle.radius(strip, 0.005)).isCloseTo(0.4, within(0.005));
    Polygon neck = InventedGround.dumbbell(0, 0, 0.5);
    assertThat(InscribedCircle.radius(neck, 0.005)).isCloseTo(6, within(0.03));
  }
}
