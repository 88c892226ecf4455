package org.mottle.export.crs;

import org.geotools.api.parameter.ParameterValueGroup;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;

/**
 * Transverse Mercator (EPSG method 9807) as GeoTools computes it, made without its factories, whose
 * search for services takes another 0.3 s of a short command. Angles in degrees, metres otherwise;
 * checked against PROJ in the tests. Immutable; the projection itself is made when first used.
 */
final class TransverseMercator {
  private final Ellipsoid ellipsoid;
  private final double lat0;
  private final double lon0;
  private final double k0;
  private final double falseEasting;
  private final double falseNorthing;
  private volatile MathTransform[] both;

  TransverseMercator(
      Ellipsoid ellipsoid, double lat0, double lon0, double k0, double fe, double fn) {
    this.ellipsoid = ellipsoid;
    this.lat0 = lat0;
    this.lon0 = lon0;
    this.k0 = k0;
    this.falseEasting = fe;
    this.falseNorthing = fn;
  }

  /** Longitude, latitude in; easting, northing out; false where the projection has no answer. */
  boolean forward(double[] xy) {
    return apply(0, xy);
  }

  /** Easting, northing in; longitude, latitude out; false where the projection has no answer. */
  boolean inverse(double[] xy) {
    return apply(1, xy);
  }

  private boolean apply(int way, double[] xy) {
    try {
      both()[way].transform(xy, 0, xy, 0, 1);
      return true;
    } catch (TransformException e) {
      return false;
    }
  }

  private MathTransform[] both() throws TransformException {
    MathTransform[] made = both;
    if (made == null) {
      Library forward = Library.of(this);
      made = new MathTransform[] {forward, forward.inverse()};
      both = made;
    }
    return made;
  }

  /** Opens the library's constructor, which is for subclasses. */
  private static final class Library
      extends org.geotools.referencing.operation.projection.TransverseMercator {
    private static final long serialVersionUID = 1L;

    private Library(ParameterValueGroup parameters) {
      super(parameters);
    }

    static Library of(TransverseMercator p) {
      ParameterValueGroup values = new Provider().getParameters().createValue();
      double a = p.ellipsoid.semiMajorM();
      values.parameter("semi_major").setValue(a);
      values.parameter("semi_minor").setValue(a - a / p.ellipsoid.inverseFlattening());
      values.parameter("latitude_of_origin").setValue(p.lat0);
      values.parameter("central_meridian").setValue(p.lon0);
      values.parameter("scale_factor").setValue(p.k0);
      values.parameter("false_easting").setValue(p.falseEasting);
      values.parameter("false_northing").setValue(p.falseNorthing);
      return new Library(values);
    }
  }
}
