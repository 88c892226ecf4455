/**
 * Writers, one class a format, and the delivery that puts their files in place together. Geometry
 * comes in metres of the working CRS; only the GeoJSON writer turns it into degrees, only the
 * raster writer knows no-data values.
 */
package org.mottle.export.write;
