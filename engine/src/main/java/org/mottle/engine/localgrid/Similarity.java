package org.mottle.engine.localgrid;

import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.check.Check;

/**
 * A similarity of the plane (Helmert's transformation in two dimensions): shift, rotation, scale.
 *
 * <pre>
 *   E' = E0' + a (E - E0) - b (N - N0)
 *   N' = N0' + b (E - E0) + a (N - N0)
 * </pre>
 *
 * Scale is the root of a² + b²; areas are scaled by its square. Immutable.
 */
public final class Similarity {
  private final Coordinate origin;
  private final Coordinate image;
  private final double a;
  private final double b;

  /**
   * @param origin a point of the first system, m
   * @param image where it lies in the second, m
   * @param a scale times the cosine of the turn, anticlockwise
   * @param b scale times its sine
   */
  public Similarity(Coordinate origin, Coordinate image, double a, double b) {
    this.origin = new Coordinate(origin.x, origin.y);
    this.image = new Coordinate(image.x, image.y);
    this.a = Check.finite("a of a similarity", a, "");
    this.b = Check.finite("b of a similarity", b, "");
    Check.above("scale of a similarity", Math.hypot(a, b), 0, "");
  }

  /** A place of the first system in the second; z is taken over. */
  public Coordinate apply(Coordinate place) {
    double east = place.x - origin.x;
    double north = place.y - origin.y;
    return new Coordinate(
        image.x + a * east - b * north, image.y + b * east + a * north, place.getZ());
  }

  /** The way back. */
  public Similarity inverse() {
    double square = a * a + b * b;
    return new Similarity(image, origin, a / square, -b / square);
  }

  public double a() {
    return a;
  }

  public double b() {
    return b;
  }

  public double scale() {
    return Math.hypot(a, b);
  }

  /**
   * Degrees by which a direction's azimuth grows on the way: azimuth in the second system less that
   * in the first, clockwise, in (-180, 180].
   */
  public double rotationDeg() {
    double turn = -Math.toDegrees(Math.atan2(b, a));
    return turn <= -180 ? turn + 360 : turn == 0 ? 0 : turn;
  }
}
