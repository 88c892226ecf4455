package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Puntal;

/**
 * Stations at points of interest and over areas of interest. A point on the green is a station. The
 * stations that the points leave are shared among the areas by size, at least one each, and laid
 * out by coverage of each; what lies nearer the outline than the inset is not covered. An area
 * without breadth, a line for instance, is left out.
 */
final class InterestPlaces {
  private final Geometry outline;
  private final Geometry inset;

  InterestPlaces(Geometry outline, Geometry inset) {
    this.outline = outline;
    this.inset = inset;
  }

  List<Coordinate> places(Design.Interest interest, int n, RandomGenerator random) {
    List<Coordinate> places = new ArrayList<>();
    List<Geometry> areas = new ArrayList<>();
    for (Geometry part : interest.areas()) {
      if (part instanceof Puntal) {
        addPoints(part, places);
      } else {
        Geometry area = part.intersection(inset).buffer(0);
        if (!area.isEmpty()) {
          areas.add(area);
        }
      }
    }
    int[] shares = shares(areas, n - places.size());
    for (int i = 0; i < shares.length; i++) {
      Ground ground = new Ground(areas.get(i));
      places.addAll(new Coverage(ground, List.of()).places(shares[i], random));
    }
    return places;
  }

  private void addPoints(Geometry points, List<Coordinate> places) {
    for (int i = 0; i < points.getNumGeometries(); i++) {
      if (outline.covers(points.getGeometryN(i))) {
        places.add(points.getGeometryN(i).getCoordinate());
      }
    }
  }

  /** One each, then the next always to the area with most ground a station. */
  private static int[] shares(List<Geometry> areas, int n) {
    int[] shares = new int[areas.size()];
    java.util.Arrays.fill(shares, 1);
    for (int left = n - shares.length; left > 0 && shares.length > 0; left--) {
      int most = 0;
      for (int i = 1; i < shares.length; i++) {
        if (areas.get(i).getArea() / shares[i] > areas.get(most).getArea() / shares[most]) {
          most = i;
        }
      }
      shares[most]++;
    }
    return shares;
  }
}
