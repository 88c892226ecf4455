package org.mottle.export.crs;

/**
 * Figure of the earth under a datum.
 *
 * @param name as EPSG names it
 * @param epsg EPSG code
 * @param semiMajorM equatorial radius, m
 * @param inverseFlattening 1/f
 */
record Ellipsoid(String name, int epsg, double semiMajorM, double inverseFlattening) {
  static final Ellipsoid WGS_84 = new Ellipsoid("WGS 84", 7030, 6378137, 298.257223563);
  static final Ellipsoid GRS_1980 = new Ellipsoid("GRS 1980", 7019, 6378137, 298.257222101);
}
