package org.mottle.export.write;

import it.geosolutions.imageio.plugins.tiff.PrivateTIFFTagSet;
import it.geosolutions.imageio.plugins.tiff.TIFFField;
import it.geosolutions.imageio.plugins.tiff.TIFFTag;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageMetadata;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageWriterSpi;
import java.awt.image.BufferedImage;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.geotools.coverage.grid.io.imageio.geotiff.CRS2GeoTiffMetadataAdapter;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffConstants;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffException;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataEncoder;
import org.geotools.coverage.grid.io.imageio.geotiff.codes.GeoTiffGCSCodes;
import org.geotools.coverage.grid.io.imageio.geotiff.codes.GeoTiffPCSCodes;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;

/**
 * One raster to a GeoTIFF (OGC 19-008r4) in the working CRS, by GeoTools and its image library: one
 * band, uncompressed, north row first, pixel is area, no-data declared (tag 42113) and the record
 * of the run in the metadata (tag 42112). Cells of float32 or one byte, see {@link RasterKind}.
 *
 * <p>The image and its keys are handed to the image library as GeoTools' own writer does, without a
 * coverage in between: a coverage takes a fifth of a second to load, turns the corner into a
 * transform and back, and lets no metadata through but a description.
 *
 * <p>Uncompressed, so that the bytes are the same with every version of the platform; a green at
 * 0.25 m cells is 50 kB. The raster is held in memory. Stateless but for what it is given.
 */
public final class GeoTiffWriter {
  private static final int LARGEST_CODE = GeoTiffConstants.GTUserDefinedGeoKey;
  private static final long LARGEST = 0xFFFFFFFFL;

  /** GTCitationGeoKey, which the library has no name for. */
  private static final int CITATION = 1026;

  /** Room for everything but the cells, generously. */
  private static final long DIRECTORY = 1 << 24;

  private final Crs crs;
  private final Provenance provenance;

  public GeoTiffWriter(Crs crs, Provenance provenance) {
    this.crs = crs;
    this.provenance = provenance;
  }

  /**
   * Loads what writing needs, some 600 classes and a third of a second, while the caller goes on
   * with other work. Whatever fails here fails again, and is told, where it is needed.
   */
  static void warmUp() {
    Thread loader = new Thread(GeoTiffWriter::load, "mottle rasters");
    loader.setDaemon(true);
    loader.setUncaughtExceptionHandler((thread, failure) -> {});
    loader.start();
  }

  private static void load() {
    Crs any = Crs.utm(31, true);
    Raster cell = new Raster(new CellGrid(0, 0, 1, 1, 1), new double[] {0});
    try {
      GeoTiffWriter writer =
          new GeoTiffWriter(
              any, new Provenance("-", "", Instant.EPOCH, List.of(), Map.of(), 0, ""));
      writer.write(OutputStream.nullOutputStream(), new NamedRaster("", "", RasterKind.CLS, cell));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Why no GeoTIFF can be written in a CRS: its key has 16 bits, the largest for "no code". */
  static Optional<String> refusal(Crs crs) {
    return crs.epsg() > 0 && crs.epsg() < LARGEST_CODE
        ? Optional.empty()
        : Optional.of(
            "no rasters: a GeoTIFF has no room for the code of "
                + crs
                + "; name a --working-crs with a code below "
                + LARGEST_CODE);
  }

  /** Writes or replaces the file. */
  public void write(Path file, NamedRaster named) throws IOException {
    requireRoom(file, named);
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      write(out, named);
    }
  }

  /**
   * Writes or replaces a picture of red, green, blue and opacity, a byte each.
   *
   * @param items for the metadata
   */
  public void writePicture(
      Path file, BufferedImage picture, PictureFrame frame, Map<String, String> items)
      throws IOException {
    GeoTiffIIOMetadataEncoder keys = crsKeys();
    keys.addGeoShortParam(GeoTiffConstants.GTRasterTypeGeoKey, GeoTiffConstants.RasterPixelIsArea);
    keys.addGeoAscii(CITATION, citation());
    keys.setModelTiePoint(0, 0, 0, frame.west(), frame.north(), 0);
    keys.setModelPixelScale(frame.pixelX(), frame.pixelY(), 0);
    Map<String, String> all = new LinkedHashMap<>(items);
    all.put("run_id", provenance.runId());
    all.put("prov", Json.text(provenance.asMap(crs)).replace("&", "\\u0026"));
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      write(out, RasterImage.rgba(picture), keys, TiffMetadata.xml(all));
    }
  }

  private void write(OutputStream out, NamedRaster named) throws IOException {
    write(out, RasterImage.of(named), keys(named), TiffMetadata.xml(items(named), named.kind()));
  }

  private static void write(
      OutputStream out, BufferedImage image, GeoTiffIIOMetadataEncoder keys, String metadata)
      throws IOException {
    ImageWriter writer = new TIFFImageWriterSpi().createWriterInstance();
    try (ImageOutputStream cached = new MemoryCacheImageOutputStream(out)) {
      TIFFImageMetadata tags =
          (TIFFImageMetadata)
              org.geotools.gce.geotiff.GeoTiffWriter.createGeoTiffIIOMetadata(
                  writer, ImageTypeSpecifier.createFromRenderedImage(image), keys, null);
      TIFFTag tag = PrivateTIFFTagSet.getInstance().getTag(PrivateTIFFTagSet.TAG_GDAL_METADATA);
      tags.getRootIFD()
          .addTIFFField(new TIFFField(tag, TIFFTag.TIFF_ASCII, 1, new String[] {metadata}));
      writer.setOutput(cached);
      writer.write(null, new IIOImage(image, null, tags), null);
    } finally {
      writer.dispose();
    }
  }

  private static void requireRoom(Path file, NamedRaster named) throws IOException {
    long cells = (long) named.raster().grid().size() * named.kind().cell().bytes();
    long end = cells + DIRECTORY;
    if (end > LARGEST) {
      throw new IOException(
          file.getFileName()
              + " needs "
              + end
              + " bytes, a GeoTIFF ends at "
              + LARGEST
              + "; use a larger cell");
    }
  }

  private GeoTiffIIOMetadataEncoder keys(NamedRaster named) throws IOException {
    GeoTiffIIOMetadataEncoder keys = crsKeys();
    CellGrid grid = named.raster().grid();
    keys.addGeoShortParam(GeoTiffConstants.GTRasterTypeGeoKey, GeoTiffConstants.RasterPixelIsArea);
    keys.addGeoAscii(CITATION, citation());
    keys.setModelTiePoint(0, 0, 0, grid.west(), grid.north(), 0);
    keys.setModelPixelScale(grid.cell(), grid.cell(), 0);
    keys.setNoData(named.kind().cell().noData());
    return keys;
  }

  /** A bar ends a text. */
  private String citation() {
    return crs.name().replaceAll("[^\\x20-\\x7E]", "?").replace('|', '/');
  }

  /** By EPSG code or not at all: a description by parameters is read differently everywhere. */
  private GeoTiffIIOMetadataEncoder crsKeys() throws IOException {
    try {
      GeoTiffIIOMetadataEncoder keys =
          new CRS2GeoTiffMetadataAdapter(crs.geotools()).parseCoordinateReferenceSystem();
      int key =
          crs.isProjected()
              ? GeoTiffPCSCodes.ProjectedCSTypeGeoKey
              : GeoTiffGCSCodes.GeographicTypeGeoKey;
      if (keys.hasGeoKeyEntry(key) && keys.getGeoShortParam(key) == crs.epsg()) {
        return keys;
      }
    } catch (GeoTiffException e) {
      throw new IOException("a GeoTIFF cannot hold " + crs, e);
    }
    throw new IOException("a GeoTIFF cannot hold " + crs + " by its code");
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
