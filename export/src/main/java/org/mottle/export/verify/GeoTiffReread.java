package org.mottle.export.verify;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataDecoder;
import org.geotools.coverage.grid.io.imageio.geotiff.PixelScale;
import org.geotools.coverage.grid.io.imageio.geotiff.TiePoint;
import org.geotools.coverage.grid.io.imageio.geotiff.codes.GeoTiffGCSCodes;
import org.geotools.coverage.grid.io.imageio.geotiff.codes.GeoTiffPCSCodes;

/**
 * Reads a GeoTIFF of one band by GeoTools' image library; the CRS is taken by its key and not
 * looked up.
 *
 * @param columns width
 * @param rows height
 * @param west x of the western edge
 * @param north y of the northern edge
 * @param cell side of a cell
 * @param epsg code of the CRS
 * @param cells cells that hold something else than the declared no-data value
 */
record GeoTiffReread(
    int columns, int rows, double west, double north, double cell, int epsg, long cells) {

  static GeoTiffReread of(Path file) throws IOException {
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    try (WatchedStream stream = new WatchedStream(file)) {
      reader.setInput(stream);
      GeoTiffIIOMetadataDecoder tags = new GeoTiffIIOMetadataDecoder(reader.getImageMetadata(0));
      if (!tags.hasTiePoints() || !tags.hasPixelScales() || !tags.hasNoData()) {
        throw new IOException("has no corner, no cell or no no-data value");
      }
      TiePoint corner = tags.getModelTiePoints()[0];
      PixelScale scale = tags.getModelPixelScales();
      Raster raster = reader.read(0).getRaster();
      if (stream.ended) {
        throw new IOException("ends before its own directory says");
      }
      return new GeoTiffReread(
          raster.getWidth(),
          raster.getHeight(),
          corner.getValueAt(3),
          corner.getValueAt(4),
          scale.getScaleX(),
          epsg(tags),
          cells(raster, tags.getNoData()));
    } catch (RuntimeException e) {
      // what the library makes of a damaged file
      throw new IOException("cannot be read: " + e.getMessage(), e);
    } finally {
      reader.dispose();
    }
  }

  private static int epsg(GeoTiffIIOMetadataDecoder tags) {
    String projected = tags.getGeoKey(GeoTiffPCSCodes.ProjectedCSTypeGeoKey);
    String code =
        projected == null ? tags.getGeoKey(GeoTiffGCSCodes.GeographicTypeGeoKey) : projected;
    return code == null ? 0 : Integer.parseInt(code);
  }

  private static long cells(Raster raster, double noData) {
    long cells = 0;
    double[] row = new double[raster.getWidth()];
    for (int r = 0; r < raster.getHeight(); r++) {
      raster.getSamples(0, r, row.length, 1, 0, row);
      for (double value : row) {
        cells += value == noData ? 0 : 1;
      }
    }
    return cells;
  }

  /** Remembers that more was asked for than there is: the library fills up what is cut off. */
  private static final class WatchedStream extends FileImageInputStream {
    private boolean ended;

    WatchedStream(Path file) throws IOException {
      super(file.toFile());
    }

    @Override
    public int read() throws IOException {
      int value = super.read();
      ended |= value < 0;
      return value;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
      int count = super.read(bytes, from, length);
      ended |= count < length;
      return count;
    }
  }
}
