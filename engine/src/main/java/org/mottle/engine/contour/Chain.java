package org.mottle.engine.contour;

import java.util.Arrays;

/**
 * A line in local coordinates.
 *
 * @param x east, m
 * @param y north, m
 * @param closed whether the last point joins the first, which is not repeated
 */
record Chain(double[] x, double[] y, boolean closed) {

  int size() {
    return x.length;
  }

  /** Whether the line, joined end to end, encloses nothing wider than about {@code width}. */
  boolean isSliver(double width) {
    double twiceArea = 0;
    double length = 0;
    for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
      twiceArea += (x[j] - x[0]) * (y[i] - y[0]) - (x[i] - x[0]) * (y[j] - y[0]);
      length += Math.hypot(x[i] - x[j], y[i] - y[j]);
    }
    return Math.abs(twiceArea) < width * length;
  }

  /** Points as they come. */
  static final class Builder {
    private double[] x = new double[64];
    private double[] y = new double[64];
    private int n;

    void add(double px, double py) {
      if (n == x.length) {
        x = Arrays.copyOf(x, 2 * n);
        y = Arrays.copyOf(y, 2 * n);
      }
      x[n] = px;
      y[n++] = py;
    }

    int size() {
      return n;
    }

    double x(int i) {
      return x[i];
    }

    double y(int i) {
      return y[i];
    }

    /** Turns the order of the points round. */
    void reverse() {
      for (int i = 0, j = n - 1; i < j; i++, j--) {
        double px = x[i];
        double py = y[i];
        x[i] = x[j];
        y[i] = y[j];
        x[j] = px;
        y[j] = py;
      }
    }

    void remove(int i) {
      n--;
      System.arraycopy(x, i + 1, x, i, n - i);
      System.arraycopy(y, i + 1, y, i, n - i);
    }

    Chain build(boolean closed) {
      return new Chain(Arrays.copyOf(x, n), Arrays.copyOf(y, n), closed);
    }
  }
}
