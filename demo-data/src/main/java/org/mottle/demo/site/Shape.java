package org.mottle.demo.site;

import org.mottle.demo.random.Decimals;

/**
 * The outline of a green: an ellipse with two harmonics, r(t) = ab / sqrt((b cos t)² + (a sin t)²)
 * · (1 + e2 cos 2(t − p2) + e3 cos 3(t − p3)), in 72 steps of t, turned by θ. The vertices are
 * rounded to the millimetre, as they stand in the files.
 *
 * @param a half the long axis, m
 * @param b half the short axis, m
 * @param oval second harmonic
 * @param pear third harmonic
 * @param turnDegrees θ, counter-clockwise from east
 */
public record Shape(double a, double b, Harmonic oval, Harmonic pear, double turnDegrees) {

  private static final int STEPS = 72;

  /**
   * @param share amplitude as a share of the radius
   * @param phase where it is largest, rad
   */
  public record Harmonic(double share, double phase) {
    double at(int order, double t) {
      return share * StrictMath.cos(order * (t - phase));
    }
  }

  /** The outline round (0, 0), counter-clockwise. */
  public Ring ring() {
    return Ring.of(
        STEPS,
        i -> Decimals.rounded(radius(t(i)) * StrictMath.cos(t(i) + turn()), 3),
        i -> Decimals.rounded(radius(t(i)) * StrictMath.sin(t(i) + turn()), 3));
  }

  private double turn() {
    return StrictMath.toRadians(turnDegrees);
  }

  private static double t(int i) {
    return 2 * Math.PI * i / STEPS;
  }

  private double radius(double t) {
    double p = b * StrictMath.cos(t);
    double q = a * StrictMath.sin(t);
    return a * b / Math.sqrt(p * p + q * q) * (1 + oval.at(2, t) + pear.at(3, t));
  }
}
