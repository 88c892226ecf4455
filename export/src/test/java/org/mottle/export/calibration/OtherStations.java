package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * 12 to 24 stations spread over a green: the best candidate of 40 each time, far from the others
 * and at least 0.7 m inside (Mitchell 1991), moved by up to 0.3 m. Half of the greens give one to
 * three of them a partner 0.4 to 0.6 m away.
 */
final class OtherStations {
  private static final double INSET_M = 0.7;
  private static final int CANDIDATES = 40;
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private final RandomGenerator random;
  private final Geometry inner;
  private final Cells cells;

  OtherStations(RandomGenerator random, Geometry outline, Cells cells) {
    this.random = random;
    this.inner = outline.buffer(-INSET_M);
    this.cells = cells;
  }

  List<Coordinate> draw() {
    int n = 12 + random.nextInt(13);
    int pairs = random.nextBoolean() ? 1 + random.nextInt(3) : 0;
    List<Coordinate> stations = new ArrayList<>();
    while (stations.size() < n - pairs) {
      stations.add(farthest(stations));
    }
    for (int k = 0; k < pairs; k++) {
      stations.add(partner(stations.get(k)));
    }
    return stations;
  }

  private Coordinate farthest(List<Coordinate> taken) {
    Coordinate best = null;
    double most = -1;
    for (int k = 0; k < CANDIDATES; k++) {
      Coordinate place = place();
      double gap = taken.stream().mapToDouble(place::distance).min().orElse(Double.MAX_VALUE);
      if (gap > most) {
        best = place;
        most = gap;
      }
    }
    return best;
  }

  private Coordinate place() {
    while (true) {
      int cell = random.nextInt(cells.size());
      Coordinate place =
          new Coordinate(
              cells.x()[cell] + OtherCourses.between(random, -0.3, 0.3),
              cells.y()[cell] + OtherCourses.between(random, -0.3, 0.3));
      if (isInside(place)) {
        return place;
      }
    }
  }

  private Coordinate partner(Coordinate of) {
    while (true) {
      double far = OtherCourses.between(random, 0.4, 0.6);
      double towards = OtherCourses.between(random, 0, 2 * Math.PI);
      Coordinate place =
          new Coordinate(of.x + far * Math.cos(towards), of.y + far * Math.sin(towards));
      if (isInside(place)) {
        return place;
      }
    }
  }

  private boolean isInside(Coordinate place) {
    return inner.covers(FACTORY.createPoint(place));
  }
}
