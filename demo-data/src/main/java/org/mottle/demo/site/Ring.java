package org.mottle.demo.site;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * A simple closed ring of vertices, counter-clockwise, the first not repeated. Area by the shoelace
 * formula, containment by the even-odd rule, distance to the nearest edge: all O(vertices).
 * Immutable, shared freely.
 */
public final class Ring {

  private final double[] x;
  private final double[] y;

  public Ring(double[] x, double[] y) {
    if (x.length != y.length || x.length < 3) {
      throw new IllegalArgumentException(
          "a ring needs at least 3 vertices, had " + x.length + " x and " + y.length + " y");
    }
    this.x = x.clone();
    this.y = y.clone();
  }

  /** A ring of {@code n} vertices from two functions of the vertex number. */
  public static Ring of(int n, IntToDoubleFunction x, IntToDoubleFunction y) {
    return new Ring(
        IntStream.range(0, n).mapToDouble(x).toArray(),
        IntStream.range(0, n).mapToDouble(y).toArray());
  }

  public int size() {
    return x.length;
  }

  public Point vertex(int i) {
    int k = Math.floorMod(i, x.length);
    return new Point(x[k], y[k]);
  }

  /** Square metres. */
  public double area() {
    double twice = 0;
    for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
      twice += x[j] * y[i] - x[i] * y[j];
    }
    return twice / 2;
  }

  public boolean contains(double px, double py) {
    boolean inside = false;
    for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
      if ((y[i] > py) != (y[j] > py) && px < (x[j] - x[i]) * (py - y[i]) / (y[j] - y[i]) + x[i]) {
        inside = !inside;
      }
    }
    return inside;
  }

  /** Metres from the nearest edge, positive inside and negative outside. */
  public double depth(double px, double py) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
      double ex = x[i] - x[j];
      double ey = y[i] - y[j];
      double t = ((px - x[j]) * ex + (py - y[j]) * ey) / (ex * ex + ey * ey);
      t = Math.max(0, Math.min(1, t));
      double dx = px - x[j] - t * ex;
      double dy = py - y[j] - t * ey;
      least = Math.min(least, dx * dx + dy * dy);
    }
    double distance = Math.sqrt(least);
    return contains(px, py) ? distance : -distance;
  }

  /** The vertices moved outwards along the bisectors so that every edge moves by {@code metres}. */
  public Ring outset(double metres) {
    int n = x.length;
    double[] ox = new double[n];
    double[] oy = new double[n];
    for (int i = 0; i < n; i++) {
      Point before = normal(Math.floorMod(i - 1, n));
      Point after = normal(i);
      double scale = metres / (1 + before.x() * after.x() + before.y() * after.y());
      ox[i] = x[i] + scale * (before.x() + after.x());
      oy[i] = y[i] + scale * (before.y() + after.y());
    }
    return new Ring(ox, oy);
  }

  /** The outward unit normal of the edge from vertex i to the next. */
  public Point normal(int i) {
    int j = (i + 1) % x.length;
    double ex = x[j] - x[i];
    double ey = y[j] - y[i];
    double length = Math.sqrt(ex * ex + ey * ey);
    return new Point(ey / length, -ex / length);
  }

  public double minX() {
    return IntStream.range(0, x.length).mapToDouble(i -> x[i]).min().getAsDouble();
  }

  public double maxX() {
    return IntStream.range(0, x.length).mapToDouble(i -> x[i]).max().getAsDouble();
  }

  public double minY() {
    return IntStream.range(0, y.length).mapToDouble(i -> y[i]).min().getAsDouble();
  }

  public double maxY() {
    return IntStream.range(0, y.length).mapToDouble(i -> y[i]).max().getAsDouble();
  }
}
