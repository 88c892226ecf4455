package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

class ShpPolygonsTest {

  private static Coordinate[] square(double x, double y, double side, boolean clockwise) {
    Coordinate[] ring = {
      new Coordinate(x, y),
      new Coordinate(x, y + side),
      new Coordinate(x + side, y + side),
      new Coordinate(x + side, y),
      new Coordinate(x, y)
    };
    if (!clockwise) {
      Collections.reverse(Arrays.asList(ring));
    }
    return ring;
  }

  /** An island in a pond in a green, and a second green with a pond, in any order and winding. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void ringsFindTheirPlaceWhateverTheOrderAndTheWinding(long seed) {
    Random random = new Random(seed);
    double[][] squares = {{0, 0, 10}, {2, 2, 6}, {4, 4, 2}, {20, 0, 10}, {22, 0, 3}};
    List<Coordinate[]> rings = new ArrayList<>();
    for (double[] s : squares) {
      rings.add(square(s[0], s[1], s[2], random.nextBoolean()));
    }
    Collections.shuffle(rings, random);
    Geometry g = ShpPolygons.of(new GeometryFactory(), rings);
    assertThat(g.getNumGeometries()).as("seed %d", seed).isEqualTo(3);
    assertThat(g.getArea()).as("seed %d", seed).isEqualTo(100 - 36 + 4 + 100 - 9);
  }
}
