package org.mottle.export.write;

import java.util.List;
import org.mottle.export.crs.Crs;

/**
 * The keys of a GeoTIFF that name its CRS (OGC 19-008r4, clause 7): by EPSG code, pixel is area.
 */
final class GeoKeys {
  private static final int MODEL_TYPE = 1024;
  private static final int RASTER_TYPE = 1025;
  private static final int CITATION = 1026;
  private static final int GEODETIC_CRS = 2048;
  private static final int PROJECTED_CRS = 3072;
  private static final int PROJECTED = 1;
  private static final int GEOGRAPHIC = 2;
  private static final int PIXEL_IS_AREA = 1;

  private GeoKeys() {}

  static List<TiffTag> of(Crs crs) {
    // the bar ends a text
    String citation = crs.name().replaceAll("[^\\x20-\\x7E]", "?").replace('|', '/') + "|";
    boolean projected = crs.isProjected();
    return List.of(
        TiffTag.shorts(
            TiffTag.GEO_KEYS,
            // version 1, revision 1.1 (GeoTIFF 1.1), four keys
            new int[] {
              1,
              1,
              1,
              4,
              MODEL_TYPE,
              0,
              1,
              projected ? PROJECTED : GEOGRAPHIC,
              RASTER_TYPE,
              0,
              1,
              PIXEL_IS_AREA,
              CITATION,
              TiffTag.GEO_TEXTS,
              citation.length(),
              0,
              projected ? PROJECTED_CRS : GEODETIC_CRS,
              0,
              1,
              crs.epsg()
            }),
        TiffTag.text(TiffTag.GEO_TEXTS, citation));
  }
}
