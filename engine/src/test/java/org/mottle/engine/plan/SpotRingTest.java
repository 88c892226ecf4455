package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

class SpotRingTest {
  private static final Geometry GREEN = InventedGreen.rectangle(20, 10);

  @Test
  void four_stations_a_metre_off_north_first_and_clockwise() {
    Positions ring = SpotRing.around(GREEN, 8, 5);
    double[][] expected = {{8, 6}, {9, 5}, {8, 4}, {7, 5}};
    assertThat(ring.size()).isEqualTo(4);
    for (int i = 0; i < 4; i++) {
      assertThat(ring.x(i)).isCloseTo(expected[i][0], within(1e-12));
      assertThat(ring.y(i)).isCloseTo(expected[i][1], within(1e-12));
    }
  }

  @Test
  void the_cross_turns_when_the_edge_is_in_its_way() {
    // 0.8 m from the northern edge: a quarter turn less 45 degrees reaches only 0.71 m north
    Positions ring = SpotRing.around(GREEN, 8, 9.2);
    assertThat(ring.size()).isEqualTo(4);
    for (int i = 0; i < 4; i++) {
      assertThat(ring.distance(i, 8, 9.2)).isCloseTo(1, within(1e-12));
      assertThat(ring.y(i)).isLessThan(10);
    }
  }

  @Test
  void stations_outside_are_left_out() {
    Positions corner = SpotRing.around(GREEN, 0.1, 0.1);
    assertThat(corner.size()).isBetween(1, 2);
    for (int i = 0; i < corner.size(); i++) {
      assertThat(corner.x(i)).isBetween(0.0, 20.0);
      assertThat(corner.y(i)).isBetween(0.0, 10.0);
    }
    assertThat(SpotRing.around(GREEN, 40, 40).size()).isZero();
  }

  @Test
  void holes_are_outside() {
    Geometry hole = new GeometryFactory().createPoint(new Coordinate(8, 6)).buffer(0.3);
    Positions ring = SpotRing.around(GREEN.difference(hole), 8, 5);
    assertThat(ring.size()).isEqualTo(4);
    for (int i = 0; i < 4; i++) {
      assertThat(Math.hypot(ring.x(i) - 8, ring.y(i) - 6)).isGreaterThan(0.29);
    }
  }
}
