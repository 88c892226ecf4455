package org.mottle.export.crs;

import java.util.List;
import java.util.Locale;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.measure.IncommensurableException;
import javax.measure.UnconvertibleException;
import org.geotools.api.metadata.extent.GeographicBoundingBox;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.NoSuchAuthorityCodeException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.cs.AxisDirection;
import org.geotools.api.referencing.cs.CoordinateSystem;
import org.geotools.referencing.CRS;
import org.geotools.referencing.wkt.Formattable;
import org.geotools.referencing.wkt.UnformattableObjectException;
import org.mottle.export.problem.InputRefused;
import si.uom.SI;

/**
 * GeoTools' copy of the EPSG data set. The first code asked of it unpacks the data set into the
 * temporary folder (about two seconds, once) and opens it (about one second in each process).
 * GeoTools and what it carries are kept from writing to the console: what a user must know is told
 * in the refusals.
 */
final class EpsgDatabase {
  /** Held strongly: the log manager forgets a level with its logger. */
  private static final List<Logger> SILENCED = silence();

  private EpsgDatabase() {}

  private static List<Logger> silence() {
    System.setProperty("hsqldb.reconfig_logging", "false");
    System.setProperty("slf4j.internal.verbosity", "ERROR");
    System.setProperty("com.sun.media.jai.disableMediaLib", "true");
    List<Logger> loggers =
        List.of(
            Logger.getLogger("org.geotools"),
            Logger.getLogger("hsqldb.db"),
            Logger.getLogger("org.hsqldb"));
    return loggers;
  }

  /** To be called before GeoTools is touched. */
  static void quiet() {
    SILENCED.forEach(l -> l.setLevel(Level.OFF));
  }

  static CoordinateReferenceSystem parse(String wkt) {
    quiet();
    try {
      return CRS.parseWKT(wkt);
    } catch (FactoryException e) {
      throw new IllegalStateException("GeoTools cannot read " + wkt, e);
    }
  }

  /** x east always: longitude and easting come first, whatever the authority's order. */
  static CoordinateReferenceSystem decode(int epsg) {
    quiet();
    try {
      return CRS.decode("EPSG:" + epsg, true);
    } catch (NoSuchAuthorityCodeException e) {
      throw new InputRefused(
          "EPSG:%d is not a known CRS; name one like EPSG:32630 (see epsg.org for codes)"
              .formatted(epsg));
    } catch (FactoryException e) {
      throw new InputRefused(
          "the EPSG data set that EPSG:%d needs cannot be opened in %s (%s); make room there or name a UTM zone"
              .formatted(epsg, System.getProperty("java.io.tmpdir"), e.getMessage()));
    }
  }

  static Crs crs(int epsg) {
    CoordinateReferenceSystem crs = decode(epsg);
    String name = crs.getName().getCode();
    CoordinateSystem cs = crs.getCoordinateSystem();
    boolean projected = crs instanceof ProjectedCRS;
    if (cs.getDimension() != 2 || !(projected || crs instanceof GeographicCRS)) {
      throw new InputRefused(
          "EPSG:%d (%s) is not a CRS of maps with two axes; name its horizontal part"
              .formatted(epsg, name));
    }
    if (cs.getAxis(0).getDirection() != AxisDirection.EAST
        || cs.getAxis(1).getDirection() != AxisDirection.NORTH) {
      throw new InputRefused(
          "the axes of EPSG:%d (%s) run %s and %s; name a CRS with x east and y north"
              .formatted(
                  epsg,
                  name,
                  direction(cs.getAxis(0).getDirection()),
                  direction(cs.getAxis(1).getDirection())));
    }
    try {
      double metres =
          projected ? cs.getAxis(0).getUnit().getConverterToAny(SI.METRE).convert(1.0) : Double.NaN;
      String wkt = ((Formattable) crs).toWKT(0).strip();
      return Crs.of(new Crs.Facts(epsg, name, projected, metres, area(crs), wkt), crs);
    } catch (UnformattableObjectException | UnconvertibleException | IncommensurableException e) {
      throw new InputRefused(
          "EPSG:%d (%s) has no plain description to write into a file; name another CRS"
              .formatted(epsg, name));
    }
  }

  private static String direction(AxisDirection direction) {
    return direction.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static AreaOfUse area(CoordinateReferenceSystem crs) {
    GeographicBoundingBox box = CRS.getGeographicBoundingBox(crs);
    return box == null
        ? AreaOfUse.WORLD
        : new AreaOfUse(
            box.getWestBoundLongitude(),
            box.getSouthBoundLatitude(),
            box.getEastBoundLongitude(),
            box.getNorthBoundLatitude());
  }
}
