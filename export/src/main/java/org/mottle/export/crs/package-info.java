/**
 * The only room that knows degrees: reference systems by name, code or description, and the way
 * from one to the other. x is east and y is north everywhere, whatever an authority's axis order.
 *
 * <p>WGS 84 and the transverse Mercator zones of the datums that EPSG equates with it are computed
 * by {@link org.mottle.export.crs.TransverseMercator} alone; every other system goes through
 * GeoTools and its copy of the EPSG data set, which takes a second or two to open.
 */
package org.mottle.export.crs;
