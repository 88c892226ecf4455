package org.mottle.engine.irrigation;

/**
 * A sprinkler head as recorded. Text that is not recorded is empty, a figure that is not recorded
 * is NaN.
 *
 * @param id unique on the site
 * @param greenId the green it waters
 * @param station of the controller; empty when not recorded
 * @param x east, m
 * @param y north, m
 * @param radiusM reach of the throw, m
 * @param arcFrom where the arc starts, degrees clockwise from grid north
 * @param arcTo where it ends, going clockwise; equal to {@code arcFrom}: a full circle
 * @param rateMmH rate given for the head by its maker or its audit, mm/h
 * @param pressureKpa at the head, kPa
 */
public record Head(
    String id,
    String greenId,
    String station,
    double x,
    double y,
    double radiusM,
    double arcFrom,
    double arcTo,
    double rateMmH,
    double pressureKpa) {

  public Head {
    if (id == null || id.isBlank()) {
      throw new IllegalArgumentException("a head needs an id, was '" + id + "'");
    }
    if (!(radiusM > 0) || Double.isInfinite(radiusM)) {
      throw new IllegalArgumentException(
          "head " + id + " needs a radius above 0 m, was " + radiusM);
    }
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException("head " + id + " needs a place, was " + x + ", " + y);
    }
    if (!Double.isFinite(arcFrom) || !Double.isFinite(arcTo)) {
      throw new IllegalArgumentException(
          "head " + id + " needs an arc, was " + arcFrom + " to " + arcTo);
    }
  }

  /** Degrees that the arc sweeps, above 0 to 360. */
  public double sweep() {
    double sweep = (arcTo - arcFrom) % 360;
    return sweep <= 0 ? sweep + 360 : sweep;
  }

  /** Whether the throw reaches a place, both ends of the arc and the circle included. */
  public boolean reaches(double atX, double atY) {
    double east = atX - x;
    double north = atY - y;
    if (Math.hypot(east, north) > radiusM) {
      return false;
    }
    double from = (Math.toDegrees(Math.atan2(east, north)) - arcFrom) % 360;
    return (from < 0 ? from + 360 : from) <= sweep() || (east == 0 && north == 0);
  }
}
