package org.mottle.demo.site;

/**
 * The transverse Mercator projection on an ellipsoid by Krüger's series in the third flattening n,
 * carried to n⁴ (the JHS form of EPSG guidance note 7-2; coefficients as there). Within 30° of the
 * central meridian of a UTM zone the neglected terms stay below a micrometre. All sines and
 * exponentials by {@link StrictMath}: the same digits on any machine. Immutable.
 */
public final class TransverseMercator {

  /**
   * @param semiMajorM metres
   * @param inverseFlattening 1/f
   */
  public record Ellipsoid(double semiMajorM, double inverseFlattening) {}

  /**
   * @param latitude0 latitude of natural origin, degrees
   * @param longitude0 central meridian, degrees
   * @param scale0 scale on it
   * @param falseEastingM metres
   * @param falseNorthingM metres
   */
  public record Grid(
      double latitude0,
      double longitude0,
      double scale0,
      double falseEastingM,
      double falseNorthingM) {}

  private final Grid grid;
  private final double eccentricity;
  private final double rectifying;
  private final double[] forward;
  private final double[] backward;
  private final double originArc;

  public TransverseMercator(Ellipsoid ellipsoid, Grid grid) {
    this.grid = grid;
    double f = 1 / ellipsoid.inverseFlattening();
    double n = f / (2 - f);
    double n2 = n * n;
    double n3 = n2 * n;
    double n4 = n2 * n2;
    eccentricity = Math.sqrt(f * (2 - f));
    rectifying = ellipsoid.semiMajorM() / (1 + n) * (1 + n2 / 4 + n4 / 64);
    forward =
        new double[] {
          n / 2 - 2 * n2 / 3 + 5 * n3 / 16 + 41 * n4 / 180,
          13 * n2 / 48 - 3 * n3 / 5 + 557 * n4 / 1440,
          61 * n3 / 240 - 103 * n4 / 140,
          49561 * n4 / 161280
        };
    backward =
        new double[] {
          n / 2 - 2 * n2 / 3 + 37 * n3 / 96 - n4 / 360,
          n2 / 48 + n3 / 15 - 437 * n4 / 1440,
          17 * n3 / 480 - 37 * n4 / 840,
          4397 * n4 / 161280
        };
    originArc = arc(StrictMath.toRadians(grid.latitude0()));
  }

  /** Metres (x east, y north) of a place in degrees. */
  public Point project(double longitude, double latitude) {
    double q = isometric(StrictMath.toRadians(latitude));
    double dl = StrictMath.toRadians(longitude - grid.longitude0());
    double beta = StrictMath.atan(StrictMath.sinh(q));
    double eta0 = atanh(StrictMath.cos(beta) * StrictMath.sin(dl));
    double xi0 = StrictMath.asin(StrictMath.sin(beta) * StrictMath.cosh(eta0));
    double xi = xi0;
    double eta = eta0;
    for (int j = 0; j < 4; j++) {
      double k = 2 * (j + 1);
      xi += forward[j] * StrictMath.sin(k * xi0) * StrictMath.cosh(k * eta0);
      eta += forward[j] * StrictMath.cos(k * xi0) * StrictMath.sinh(k * eta0);
    }
    double scale = grid.scale0();
    return new Point(
        grid.falseEastingM() + scale * rectifying * eta,
        grid.falseNorthingM() + scale * (rectifying * xi - originArc));
  }

  /** Degrees of a place in metres: x is the longitude, y the latitude. */
  public Point degrees(Point metres) {
    double scaled = grid.scale0() * rectifying;
    double eta = (metres.x() - grid.falseEastingM()) / scaled;
    double xi = (metres.y() - grid.falseNorthingM() + grid.scale0() * originArc) / scaled;
    double xi0 = xi;
    double eta0 = eta;
    for (int j = 0; j < 4; j++) {
      double k = 2 * (j + 1);
      xi0 -= backward[j] * StrictMath.sin(k * xi) * StrictMath.cosh(k * eta);
      eta0 -= backward[j] * StrictMath.cos(k * xi) * StrictMath.sinh(k * eta);
    }
    double beta = StrictMath.asin(StrictMath.sin(xi0) / StrictMath.cosh(eta0));
    double isometric = asinh(StrictMath.tan(beta));
    double dl = StrictMath.asin(StrictMath.tanh(eta0) / StrictMath.cos(beta));
    double q = isometric;
    for (int i = 0; i < 8; i++) {
      q = isometric + eccentricity * atanh(eccentricity * StrictMath.tanh(q));
    }
    return new Point(
        grid.longitude0() + StrictMath.toDegrees(dl),
        StrictMath.toDegrees(StrictMath.atan(StrictMath.sinh(q))));
  }

  private double arc(double latitude) {
    double beta = StrictMath.atan(StrictMath.sinh(isometric(latitude)));
    double xi = beta;
    for (int j = 0; j < 4; j++) {
      xi += forward[j] * StrictMath.sin(2 * (j + 1) * beta);
    }
    return rectifying * xi;
  }

  private double isometric(double latitude) {
    return asinh(StrictMath.tan(latitude))
        - eccentricity * atanh(eccentricity * StrictMath.sin(latitude));
  }

  private static double asinh(double v) {
    double a = Math.abs(v);
    double r = StrictMath.log1p(a + a * a / (1 + Math.sqrt(a * a + 1)));
    return v < 0 ? -r : r;
  }

  private static double atanh(double v) {
    return 0.5 * StrictMath.log1p(2 * v / (1 - v));
  }
}
