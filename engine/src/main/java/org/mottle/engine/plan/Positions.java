package org.mottle.engine.plan;

import java.util.List;
import org.mottle.engine.check.Check;

/** Places in the plane, m, in an order that means something to whoever made them. Immutable. */
public final class Positions {
  /** No place at all. */
  public static final Positions NONE = new Positions(new double[0], new double[0]);

  private final double[] x;
  private final double[] y;

  private Positions(double[] x, double[] y) {
    this.x = x;
    this.y = y;
  }

  /**
   * @param x [n] east, m
   * @param y [n] north, m
   * @throws IllegalArgumentException for unequal lengths or numbers that are not finite
   */
  public static Positions of(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(
          "positions have " + x.length + " x and " + y.length + " y: one of each a place");
    }
    for (int i = 0; i < x.length; i++) {
      Check.finite("x of position " + (i + 1), x[i], "m");
      Check.finite("y of position " + (i + 1), y[i], "m");
    }
    return new Positions(x.clone(), y.clone());
  }

  /** The places of these indices, in this order. */
  Positions pick(List<Integer> indices) {
    return new Positions(
        indices.stream().mapToDouble(i -> x[i]).toArray(),
        indices.stream().mapToDouble(i -> y[i]).toArray());
  }

  public int size() {
    return x.length;
  }

  public double x(int i) {
    return x[i];
  }

  public double y(int i) {
    return y[i];
  }

  public double[] xs() {
    return x.clone();
  }

  public double[] ys() {
    return y.clone();
  }

  /** Distance of place {@code i} to a point, m. */
  double distance(int i, double toX, double toY) {
    return Math.hypot(x[i] - toX, y[i] - toY);
  }

  /** Distance of the nearest place to a point, m; infinite if there is none. */
  double nearest(double toX, double toY) {
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      nearest = Math.min(nearest, distance(i, toX, toY));
    }
    return nearest;
  }
}
