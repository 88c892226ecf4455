package org.mottle.demo.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleBinaryOperator;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.site.Point;

/**
 * A raster as ArcInfo ASCII grid, northern row first, with a .prj beside it: any GIS opens it.
 *
 * @param corner south-west corner, EPSG:32628
 * @param cellM side of a cell
 * @param columns west to east
 * @param rows north to south
 */
record GridText(Point corner, double cellM, int columns, int rows) {

  static final String NO_DATA = "-9999";

  /** EPSG:32628 as WKT 1 in the form .prj files have. */
  static final String PRJ =
      "PROJCS[\"WGS_1984_UTM_Zone_28N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
          + "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],"
          + "UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],"
          + "PARAMETER[\"Central_Meridian\",-15.0],PARAMETER[\"Scale_Factor\",0.9996],"
          + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]\n";

  /** Writes NAME.asc and NAME.prj; the function gets EPSG:32628, NaN is no data. */
  void write(Path folder, String name, DoubleBinaryOperator value, int digits) throws IOException {
    StringBuilder text = new StringBuilder(columns * rows * (digits + 4));
    text.append("ncols ").append(columns).append("\nnrows ").append(rows);
    text.append("\nxllcorner ").append(Decimals.fixed(corner.x(), 3));
    text.append("\nyllcorner ").append(Decimals.fixed(corner.y(), 3));
    text.append("\ncellsize ").append(Decimals.fixed(cellM, 3));
    text.append("\nNODATA_value ").append(NO_DATA).append('\n');
    for (int row = 0; row < rows; row++) {
      double y = corner.y() + (rows - row - 0.5) * cellM;
      for (int column = 0; column < columns; column++) {
        double v = value.applyAsDouble(corner.x() + (column + 0.5) * cellM, y);
        text.append(Double.isNaN(v) ? NO_DATA : Decimals.fixed(v, digits));
        text.append(column + 1 < columns ? ' ' : '\n');
      }
    }
    Files.writeString(folder.resolve(name + ".asc"), text, StandardCharsets.US_ASCII);
    Files.writeString(folder.resolve(name + ".prj"), PRJ, StandardCharsets.US_ASCII);
  }
}
