package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineSegment;

/**
 * Where the numbers of the stations stand on the drawing: of sixteen places round each the one that
 * covers least of other shapes, other numbers and the walk, the first of equals. Three rounds, in
 * the order of the stations; the same drawing every time. Quadratic in the stations, which are few.
 * All in mm of the drawing, y downwards.
 */
final class NumberPlaces {
  private static final int DIRECTIONS = 8;
  private static final double[] DISTANCES_MM = {0.8, 2.2};
  private static final int ROUNDS = 3;
  private static final double GLYPH_MM = 1.75;
  private static final double HEIGHT_MM = 2.7;

  private final List<Coordinate> places;
  private final List<Envelope> shapes = new ArrayList<>();
  private final List<String> texts;
  private final Envelope sheet;

  /**
   * @param places middles of the shapes, in walking order
   * @param halves half size of each shape
   * @param texts what is to be written
   * @param sheet the drawing
   */
  NumberPlaces(List<Coordinate> places, List<Double> halves, List<String> texts, Envelope sheet) {
    this.places = places;
    this.texts = texts;
    this.sheet = sheet;
    for (int i = 0; i < places.size(); i++) {
      Envelope shape = new Envelope(places.get(i));
      shape.expandBy(halves.get(i));
      shapes.add(shape);
    }
  }

  /** A box for every text. */
  List<Envelope> find() {
    List<Envelope> boxes = new ArrayList<>();
    places.forEach(p -> boxes.add(null));
    for (int round = 0; round < ROUNDS; round++) {
      for (int i = 0; i < places.size(); i++) {
        boxes.set(i, best(i, boxes));
      }
    }
    return boxes;
  }

  private Envelope best(int i, List<Envelope> boxes) {
    Envelope best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int d = 0; d < DISTANCES_MM.length; d++) {
      for (int k = 0; k < DIRECTIONS; k++) {
        Envelope box = box(i, k, DISTANCES_MM[d]);
        double cost = 1.5 * d + 0.1 * k + cost(i, box, boxes);
        if (cost < least) {
          least = cost;
          best = box;
        }
      }
    }
    return best;
  }

  private Envelope box(int i, int direction, double distance) {
    double angle = -Math.PI / 4 + direction * 2 * Math.PI / DIRECTIONS;
    double halfWide = GLYPH_MM * texts.get(i).length() / 2;
    Envelope shape = shapes.get(i);
    double reach = shape.getWidth() / 2 + distance;
    double x = places.get(i).x + Math.cos(angle) * (reach + halfWide);
    double y = places.get(i).y + Math.sin(angle) * (reach + HEIGHT_MM / 2);
    return new Envelope(x - halfWide, x + halfWide, y - HEIGHT_MM / 2, y + HEIGHT_MM / 2);
  }

  private double cost(int i, Envelope box, List<Envelope> boxes) {
    double cost = sheet.contains(box) ? 0 : 1000;
    for (int j = 0; j < places.size(); j++) {
      cost += 30 * overlap(box, shapes.get(j));
      if (j != i && boxes.get(j) != null) {
        cost += 30 * overlap(box, boxes.get(j));
      }
      if (j > 0 && crosses(new LineSegment(places.get(j - 1), places.get(j)), box)) {
        cost += 4;
      }
    }
    return cost;
  }

  private static double overlap(Envelope a, Envelope b) {
    Envelope both = a.intersection(b);
    return both.isNull() ? 0 : both.getArea() + 0.2;
  }

  private static boolean crosses(LineSegment leg, Envelope box) {
    if (!box.intersects(leg.p0, leg.p1)) {
      return false;
    }
    Coordinate middle = box.centre();
    return leg.distance(middle) < Math.min(box.getWidth(), box.getHeight()) / 2;
  }
}
