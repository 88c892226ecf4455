package org.mottle.export.job;

import org.locationtech.jts.geom.Coordinate;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.write.GeoPackageWriter;

/**
 * Loads what takes long to load beside the reading, not after it: the earlier it starts, the more
 * of it is done when it is needed. Changes no result; threads end by themselves and never keep the
 * process alive.
 */
public final class WarmUp {

  private WarmUp() {}

  /**
   * Returns at once.
   *
   * @param geopackage whether one will be written
   */
  public static void start(boolean geopackage) {
    beside(
        () -> CrsTransform.between(Crs.utm(31, true), Crs.wgs84()).apply(new Coordinate(5e5, 5e6)));
    if (geopackage) {
      beside(GeoPackageWriter::warmUp);
    }
  }

  private static void beside(Runnable work) {
    Thread loader = new Thread(work, "mottle warm-up");
    // what fails here fails again, and is told, where it is needed; or the process is ending
    loader.setUncaughtExceptionHandler((thread, fault) -> {});
    loader.setDaemon(true);
    loader.start();
  }
}
