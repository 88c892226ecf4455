package org.mottle.export.crs;

import java.util.Locale;

/**
 * Where a reference system may be used, degrees of WGS 84. West may exceed east: then the area
 * crosses the 180th meridian.
 */
public record AreaOfUse(double west, double south, double east, double north) {
  public static final AreaOfUse WORLD = new AreaOfUse(-180, -90, 180, 90);

  /** Whether a place is inside, or at most {@code slackDegrees} outside. */
  public boolean contains(double lon, double lat, double slackDegrees) {
    if (!(lat >= south - slackDegrees && lat <= north + slackDegrees)) {
      return false;
    }
    double width = west <= east ? east - west : east - west + 360;
    double fromWest = wrap(lon - (west - slackDegrees));
    return width + 2 * slackDegrees >= 360 || fromWest <= width + 2 * slackDegrees;
  }

  private static double wrap(double degrees) {
    double d = degrees % 360;
    return d < 0 ? d + 360 : d;
  }

  /** "6.0 W to 0.0 E, 0.0 N to 84.0 N". */
  @Override
  public String toString() {
    return longitude(west)
        + " to "
        + longitude(east)
        + ", "
        + latitude(south)
        + " to "
        + latitude(north);
  }

  private static String longitude(double lon) {
    return String.format(Locale.ROOT, "%.1f%s", Math.abs(lon), lon < 0 ? "W" : "E");
  }

  private static String latitude(double lat) {
    return String.format(Locale.ROOT, "%.1f%s", Math.abs(lat), lat < 0 ? "S" : "N");
  }
}
