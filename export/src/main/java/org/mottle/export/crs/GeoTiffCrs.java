package org.mottle.export.crs;

import javax.imageio.metadata.IIOMetadata;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataDecoder;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffMetadata2CRSAdapter;
import org.mottle.export.problem.InputRefused;

/** A system that a GeoTIFF describes by parameters, without a code. */
public final class GeoTiffCrs {
  private GeoTiffCrs() {}

  /**
   * @param metadata of the image
   * @param name how the file calls its system, for messages
   * @throws InputRefused when no EPSG code has these parameters
   */
  public static Crs of(IIOMetadata metadata, String name) {
    EpsgDatabase.quiet();
    String text;
    try {
      text =
          new GeoTiffMetadata2CRSAdapter(null)
              .createCoordinateSystem(new GeoTiffIIOMetadataDecoder(metadata))
              .toWKT();
    } catch (Exception e) { // the library declares no narrower one
      throw new InputRefused(
          "its CRS '%s' has no EPSG code and is not understood; name it with --crs"
              .formatted(name));
    }
    return Crs.parse(text);
  }
}
