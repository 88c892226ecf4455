package org.mottle.demo.site;

import java.util.ArrayList;
import java.util.List;

/**
 * A sprinkler head, 1.5 m outside the green, watering inwards.
 *
 * @param id H5-2 is the second head of G5
 * @param place metres from the centre of its green
 * @param arc sector it waters
 */
public record Head(String id, Point place, Arc arc) {

  public static final double RADIUS_M = 17;
  public static final double RATE_MM_H = 12;
  public static final double OUTSIDE_M = 1.5;

  /**
   * @param from degrees clockwise from grid north
   * @param to degrees clockwise from grid north; the sector runs clockwise
   */
  public record Arc(int from, int to) {
    public int sweep() {
      return Math.floorMod(to - from, 360);
    }

    boolean covers(double azimuth) {
      return Math.floorMod((long) StrictMath.floor(azimuth - from), 360L) < sweep();
    }
  }

  /** The heads of a green: as surveyed on G5, elsewhere four, or five from 520 m², evenly round. */
  public static List<Head> of(GreenSite green) {
    List<Point> places = green.id().equals("G5") ? surveyed() : round(green);
    List<Head> heads = new ArrayList<>();
    for (Point p : places) {
      String id = "H" + green.id().substring(1) + "-" + (heads.size() + 1);
      heads.add(new Head(id, p, inwards(green.ring(), p)));
    }
    return heads;
  }

  /** Whether the water of this head falls on the place (its arc and radius). */
  public boolean reaches(double dx, double dy) {
    return distance(dx, dy) <= RADIUS_M && arc.covers(azimuth(place, dx, dy));
  }

  public double distance(double dx, double dy) {
    return place.distance(new Point(dx, dy));
  }

  private static List<Point> surveyed() {
    return List.of(
        new Point(-9, 5.2), new Point(10.5, -4.9), new Point(10.1, 10.1), new Point(-8.2, -11.7));
  }

  private static List<Point> round(GreenSite green) {
    Ring ring = green.ring();
    int n = ring.area() < 520 ? 4 : 5;
    Ring outside = ring.outset(OUTSIDE_M);
    List<Point> places = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      Point p = outside.vertex((int) Math.round((k + 0.5) * ring.size() / n));
      places.add(new Point(Math.round(p.x() * 10) / 10.0, Math.round(p.y() * 10) / 10.0));
    }
    return places;
  }

  /** The narrowest sector that holds the whole outline, widened to full 5 degrees. */
  private static Arc inwards(Ring ring, Point from) {
    double middle = azimuth(from, 0, 0);
    double left = 0;
    double right = 0;
    for (int i = 0; i < ring.size(); i++) {
      Point v = ring.vertex(i);
      double off = azimuth(from, v.x(), v.y()) - middle;
      off -= 360 * Math.rint(off / 360);
      left = Math.min(left, off);
      right = Math.max(right, off);
    }
    int lo = 5 * (int) Math.floor((middle + left) / 5);
    int hi = 5 * (int) Math.ceil((middle + right) / 5);
    return new Arc(Math.floorMod(lo, 360), Math.floorMod(hi, 360));
  }

  private static double azimuth(Point from, double x, double y) {
    double a = StrictMath.toDegrees(StrictMath.atan2(x - from.x(), y - from.y()));
    return a < 0 ? a + 360 : a;
  }
}
