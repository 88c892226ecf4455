package org.mottle.export.write;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BandedSampleModel;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferFloat;
import java.awt.image.WritableRaster;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/** The cells of a raster as a grey image of one band, NaN as the no-data value of its kind. */
final class RasterImage {
  private RasterImage() {}

  static BufferedImage of(NamedRaster named) {
    CellGrid grid = named.raster().grid();
    DataBuffer cells =
        named.kind().cell() == RasterKind.Cell.FLOAT32 ? floats(named) : bytes(named);
    BandedSampleModel layout =
        new BandedSampleModel(cells.getDataType(), grid.columns(), grid.rows(), 1);
    WritableRaster raster = java.awt.image.Raster.createWritableRaster(layout, cells, null);
    ComponentColorModel grey =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_GRAY),
            false,
            false,
            Transparency.OPAQUE,
            cells.getDataType());
    return new BufferedImage(grey, raster, false, null);
  }

  /** A picture as four bytes a pixel, red first, opacity last and not multiplied in. */
  static BufferedImage rgba(BufferedImage picture) {
    int columns = picture.getWidth();
    int rows = picture.getHeight();
    byte[] bytes = new byte[4 * columns * rows];
    int at = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int argb = picture.getRGB(column, row);
        bytes[at++] = (byte) (argb >> 16);
        bytes[at++] = (byte) (argb >> 8);
        bytes[at++] = (byte) argb;
        bytes[at++] = (byte) (argb >>> 24);
      }
    }
    WritableRaster raster =
        java.awt.image.Raster.createInterleavedRaster(
            new DataBufferByte(bytes, bytes.length),
            columns,
            rows,
            4 * columns,
            4,
            new int[] {0, 1, 2, 3},
            null);
    ComponentColorModel colours =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_sRGB),
            true,
            false,
            Transparency.TRANSLUCENT,
            DataBuffer.TYPE_BYTE);
    return new BufferedImage(colours, raster, false, null);
  }

  private static DataBuffer floats(NamedRaster named) {
    Raster raster = named.raster();
    int columns = raster.grid().columns();
    float[] cells = new float[raster.grid().size()];
    for (int i = 0; i < cells.length; i++) {
      double value = raster.value(i / columns, i % columns);
      cells[i] = Double.isNaN(value) ? named.kind().cell().noData() : (float) value;
    }
    return new DataBufferFloat(cells, cells.length);
  }

  private static DataBuffer bytes(NamedRaster named) {
    Raster raster = named.raster();
    int columns = raster.grid().columns();
    byte[] cells = new byte[raster.grid().size()];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = (byte) whole(raster.value(i / columns, i % columns), named);
    }
    return new DataBufferByte(cells, cells.length);
  }

  private static int whole(double value, NamedRaster named) {
    int noData = named.kind().cell().noData();
    if (Double.isNaN(value)) {
      return noData;
    }
    if (value >= 0 && value < noData && value == Math.rint(value)) {
      return (int) value;
    }
    throw new IllegalArgumentException(
        "raster "
            + named.kind().code()
            + " of green "
            + named.greenId()
            + " holds whole numbers from 0 to "
            + (noData - 1)
            + ", was "
            + value);
  }
}
