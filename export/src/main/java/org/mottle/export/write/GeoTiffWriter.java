package org.mottle.export.write;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;

/**
 * One raster to a GeoTIFF (OGC 19-008r4, version 1.1) in the working CRS: baseline TIFF 6.0, one
 * band, uncompressed, north row first, pixel is area, no-data declared (tag 42113) and the record
 * of the run in the metadata (tag 42112). Cells of float32 or one byte, see {@link RasterKind}.
 *
 * <p>Our own and not a library's: an image library takes a second to start, three times the whole
 * delivery, and keeps no room for the record. Uncompressed, so that the bytes are the same with
 * every version of the platform; a green at 0.25 m cells is 50 kB.
 *
 * <p>Streaming by rows. Stateless but for what it is given.
 */
public final class GeoTiffWriter {
  private final Crs crs;
  private final Provenance provenance;

  public GeoTiffWriter(Crs crs, Provenance provenance) {
    this.crs = crs;
    this.provenance = provenance;
  }

  /** Writes or replaces the file. */
  public void write(Path file, NamedRaster named) throws IOException {
    Raster raster = named.raster();
    CellGrid grid = raster.grid();
    RasterKind.Cell cell = named.kind().cell();
    List<TiffTag> tags = tags(named);
    int start = TiffTag.directoryBytes(tags);
    long end = start + (long) grid.size() * cell.bytes();
    if (end > 0xFFFFFFFFL) {
      throw new IOException(
          file.getFileName()
              + " needs "
              + end
              + " bytes, a GeoTIFF ends at 4294967295;"
              + " use a larger cell");
    }
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      out.write(TiffTag.directory(tags));
      ByteBuffer row =
          ByteBuffer.allocate(grid.columns() * cell.bytes()).order(ByteOrder.LITTLE_ENDIAN);
      for (int r = 0; r < grid.rows(); r++) {
        row.clear();
        for (int c = 0; c < grid.columns(); c++) {
          put(row, cell, raster.value(r, c), named);
        }
        out.write(row.array());
      }
    }
  }

  private static void put(ByteBuffer row, RasterKind.Cell cell, double value, NamedRaster named) {
    if (cell == RasterKind.Cell.FLOAT32) {
      row.putFloat(Double.isNaN(value) ? cell.noData() : (float) value);
    } else if (Double.isNaN(value)) {
      row.put((byte) cell.noData());
    } else if (value >= 0 && value < cell.noData() && value == Math.rint(value)) {
      row.put((byte) (int) value);
    } else {
      throw new IllegalArgumentException(
          "raster "
              + named.kind().code()
              + " of green "
              + named.greenId()
              + " holds whole numbers from 0 to "
              + (cell.noData() - 1)
              + ", was "
              + value);
    }
  }

  private List<TiffTag> tags(NamedRaster named) {
    CellGrid grid = named.raster().grid();
    RasterKind.Cell cell = named.kind().cell();
    boolean real = cell == RasterKind.Cell.FLOAT32;
    List<TiffTag> tags = new ArrayList<>();
    tags.add(TiffTag.longs(TiffTag.IMAGE_WIDTH, grid.columns()));
    tags.add(TiffTag.longs(TiffTag.IMAGE_LENGTH, grid.rows()));
    tags.add(TiffTag.shorts(TiffTag.BITS_PER_SAMPLE, 8 * cell.bytes()));
    tags.add(TiffTag.shorts(TiffTag.COMPRESSION, 1));
    tags.add(TiffTag.shorts(TiffTag.PHOTOMETRIC, 1));
    tags.add(TiffTag.longs(TiffTag.STRIP_OFFSETS, 0));
    tags.add(TiffTag.shorts(TiffTag.SAMPLES_PER_PIXEL, 1));
    tags.add(TiffTag.longs(TiffTag.ROWS_PER_STRIP, grid.rows()));
    tags.add(TiffTag.longs(TiffTag.STRIP_BYTE_COUNTS, grid.size() * cell.bytes()));
    tags.add(TiffTag.shorts(TiffTag.SAMPLE_FORMAT, real ? 3 : 1));
    tags.add(TiffTag.doubles(TiffTag.PIXEL_SCALE, grid.cell(), grid.cell(), 0));
    tags.add(TiffTag.doubles(TiffTag.TIE_POINT, 0, 0, 0, grid.west(), grid.north(), 0));
    tags.addAll(GeoKeys.of(crs));
    tags.add(TiffTag.text(TiffTag.GDAL_METADATA, TiffMetadata.xml(items(named), named.kind())));
    tags.add(TiffTag.text(TiffTag.GDAL_NODATA, Integer.toString(cell.noData())));
    return tags;
  }

  private Map<String, String> items(NamedRaster named) {
    Map<String, String> items = new LinkedHashMap<>();
    items.put("green_id", named.greenId());
    items.put("surv_id", named.surveyId());
    items.put("kind", named.kind().code());
    items.put("meaning", named.kind().meaning());
    items.put("run_id", provenance.runId());
    // JSON can say an ampersand without one, which spares every reader the question of escapes
    items.put("prov", Json.text(provenance.asMap(crs)).replace("&", "\\u0026"));
    return items;
  }
}
