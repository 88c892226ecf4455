package org.mottle.export.write;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a delivery can be written as, with its place in the delivered folder. */
public enum Format {
  GEOPACKAGE("mottle.gpkg"),
  GEOJSON("geojson"),
  SHAPEFILE("shapefile"),
  RASTER("raster");

  private final String place;

  Format(String place) {
    this.place = place;
  }

  /** The file or folder, relative to the delivered folder. */
  public String place() {
    return place;
  }

  /** As users name it: geopackage (or gpkg), geojson, shapefile (or shp), raster (or tif). */
  public static Optional<Format> ofName(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT);
    String full =
        switch (wanted) {
          case "gpkg" -> "geopackage";
          case "shp" -> "shapefile";
          case "tif", "tiff", "geotiff" -> "raster";
          default -> wanted;
        };
    return Arrays.stream(values())
        .filter(f -> f.name().toLowerCase(Locale.ROOT).equals(full))
        .findFirst();
  }
}
