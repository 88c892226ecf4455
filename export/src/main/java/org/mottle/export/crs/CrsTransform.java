package org.mottle.export.crs;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFilter;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.problem.InputRefused;

/**
 * Coordinates of one reference system in another; x east and y north in both. Between WGS 84 and
 * the grids of {@link Zones} by {@link TransverseMercator}, without the EPSG data set; otherwise by
 * the operation GeoTools finds best. Heights are carried along unchanged.
 *
 * <p>A place more than a degree outside the area of use of either system is refused: there a
 * projection returns numbers that look like coordinates and are none. Immutable; share freely.
 */
public final class CrsTransform {
  /** How far outside an area of use a place may lie, degrees. */
  static final double SLACK_DEGREES = 1;

  /** One change of coordinates in place; false where it has no answer. */
  interface Step {
    boolean apply(double[] xy);
  }

  private final Crs from;
  private final Crs to;
  private final double accuracyM;

  /** From the source to longitude and latitude, to see where on earth a place is. */
  private final Step toDegrees;

  /** From the source to the target; null where the degrees are the half-way house anyway. */
  private final Step direct;

  private final Step fromDegrees;

  private CrsTransform(
      Crs from, Crs to, double accuracyM, Step toDegrees, Step direct, Step fromDegrees) {
    this.from = from;
    this.to = to;
    this.accuracyM = accuracyM;
    this.toDegrees = toDegrees;
    this.direct = direct;
    this.fromDegrees = fromDegrees;
  }

  public static CrsTransform between(Crs from, Crs to) {
    if (from.datum() != null && to.datum() != null) {
      double accuracy =
          from.datum() == to.datum() ? 0 : Math.hypot(from.datum().accuracyM, to.datum().accuracyM);
      // a place that stays in its system keeps every bit
      Step direct = from.equals(to) ? xy -> true : null;
      return new CrsTransform(from, to, accuracy, toDegrees(from), direct, fromDegrees(to));
    }
    return throughGeoTools(from, to);
  }

  private static Step toDegrees(Crs crs) {
    TransverseMercator projection = crs.projection();
    return xy -> projection == null || projection.inverse(xy);
  }

  private static Step fromDegrees(Crs crs) {
    TransverseMercator projection = crs.projection();
    return xy -> projection == null || projection.forward(xy);
  }

  private static CrsTransform throughGeoTools(Crs from, Crs to) {
    Step toDegrees =
        from.datum() != null ? toDegrees(from) : GeoToolsOperation.between(from, Crs.wgs84());
    if (from.equals(to)) {
      return new CrsTransform(from, to, 0, toDegrees, xy -> true, null);
    }
    GeoToolsOperation operation = GeoToolsOperation.between(from, to);
    return new CrsTransform(from, to, operation.accuracyM(), toDegrees, operation, null);
  }

  public Crs from() {
    return from;
  }

  public Crs to() {
    return to;
  }

  /**
   * What the change of datum may cost, m: 0 within one datum; a metre or more where only the
   * average shift of a country is known.
   */
  public double accuracyM() {
    return accuracyM;
  }

  /** What is wrong with a place of the source; empty when it can be carried over. */
  public Optional<String> problemAt(double x, double y) {
    try {
      carry(new double[] {x, y});
      return Optional.empty();
    } catch (OutsideException e) {
      return Optional.of(e.getMessage());
    }
  }

  /**
   * A place of the source in the target, height unchanged.
   *
   * @throws InputRefused outside the area of use of either system
   */
  public Coordinate apply(Coordinate place) {
    double[] xy = {place.x, place.y};
    refuseOutside(xy);
    Coordinate moved = place.copy();
    moved.x = xy[0];
    moved.y = xy[1];
    return moved;
  }

  /**
   * A copy of the geometry in the target system.
   *
   * @throws InputRefused outside the area of use of either system
   */
  public Geometry apply(Geometry geometry) {
    Geometry moved = geometry.copy();
    double[] xy = new double[2];
    moved.apply(
        new CoordinateSequenceFilter() {
          @Override
          public void filter(CoordinateSequence places, int i) {
            xy[0] = places.getX(i);
            xy[1] = places.getY(i);
            refuseOutside(xy);
            places.setOrdinate(i, CoordinateSequence.X, xy[0]);
            places.setOrdinate(i, CoordinateSequence.Y, xy[1]);
          }

          @Override
          public boolean isDone() {
            return false;
          }

          @Override
          public boolean isGeometryChanged() {
            return true;
          }
        });
    return moved;
  }

  private void refuseOutside(double[] xy) {
    try {
      carry(xy);
    } catch (OutsideException e) {
      throw new InputRefused(e.getMessage());
    }
  }

  private void carry(double[] xy) throws OutsideException {
    double x = xy[0];
    double y = xy[1];
    requirePlausible(x, y);
    double[] degrees = {x, y};
    boolean held = toDegrees.apply(degrees);
    if (held) {
      requireInside(from, x, y, degrees);
      requireInside(to, x, y, degrees);
      if (direct != null) {
        held = direct.apply(xy);
      } else {
        System.arraycopy(degrees, 0, xy, 0, 2);
        held = fromDegrees.apply(xy);
      }
    }
    if (!held) {
      throw new OutsideException(
          "%s is outside what %s can hold; name the right CRS".formatted(place(x, y), from));
    }
  }

  private void requirePlausible(double x, double y) throws OutsideException {
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new OutsideException("%s is not a place".formatted(place(x, y)));
    }
    boolean couldBeDegrees = Math.abs(x) <= 360 && Math.abs(y) <= 90;
    if (!from.isProjected() && !couldBeDegrees) {
      throw new OutsideException(
          "%s cannot be longitude and latitude in degrees; name the projected CRS it is in with --crs"
              .formatted(place(x, y)));
    }
    if (from.isProjected() && couldBeDegrees) {
      throw new OutsideException(
          "%s looks like degrees, not like %s; name the CRS it is in with --crs (EPSG:4326 for longitude and latitude)"
              .formatted(place(x, y), from));
    }
  }

  private void requireInside(Crs crs, double x, double y, double[] degrees)
      throws OutsideException {
    if (!crs.areaOfUse().contains(degrees[0], degrees[1], SLACK_DEGREES)) {
      throw new OutsideException(
          "%s is outside the area of use of %s, which is %s; name the right CRS"
              .formatted(place(x, y), crs, crs.areaOfUse()));
    }
  }

  private static String place(double x, double y) {
    return "x %s, y %s".formatted(Crs.plainNumber(x), Crs.plainNumber(y));
  }

  private static final class OutsideException extends Exception {
    private static final long serialVersionUID = 1L;

    OutsideException(String message) {
      super(message, null, false, false);
    }
  }
}
