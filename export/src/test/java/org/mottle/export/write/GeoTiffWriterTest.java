package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.geotools.api.geometry.Bounds;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataDecoder;
import org.geotools.coverage.util.CoverageUtilities;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.referencing.CRS;
import org.geotools.util.factory.Hints;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.grid.CellGrid;
import org.mottle.export.crs.Crs;

/** Read back as a coverage, which the writer does not go through. */
class GeoTiffWriterTest {
  @TempDir Path folder;

  private Path write(NamedRaster raster) throws IOException {
    Path file = folder.resolve(raster.kind().code() + ".tif");
    new GeoTiffWriter(Examples.CRS, Examples.provenance()).write(file, raster);
    return file;
  }

  /** The CRS is set from outside so that this reader need not unpack its EPSG database. */
  private static GridCoverage2D read(Path file) throws IOException {
    Hints hints = new Hints(Hints.DEFAULT_COORDINATE_REFERENCE_SYSTEM, Examples.CRS.geotools());
    GeoTiffReader reader = new GeoTiffReader(file.toFile(), hints);
    try {
      return reader.read(new GeneralParameterValue[0]);
    } finally {
      reader.dispose();
    }
  }

  @Test
  void asymmetricRasterComesBackCellByCell() throws IOException {
    GridCoverage2D coverage = read(write(Examples.raster("1", "S1", RasterKind.VWC)));
    Raster cells = coverage.getRenderedImage().getData();
    assertThat(cells.getWidth()).isEqualTo(3);
    assertThat(cells.getHeight()).isEqualTo(2);
    float[] expected = {11.5f, 12.25f, 13.125f, -9999f, 15.0625f, -16.75f};
    for (int i = 0; i < 6; i++) {
      assertThat(cells.getSampleFloat(i % 3, i / 3, 0)).isEqualTo(expected[i]);
    }
    assertThat(CoverageUtilities.getNoDataProperty(coverage).getAsSingleValue()).isEqualTo(-9999);
    Bounds box = coverage.getEnvelope();
    assertThat(box.getMinimum(0)).isCloseTo(Examples.EAST, within(1e-9));
    assertThat(box.getMaximum(0)).isCloseTo(Examples.EAST + 2.25, within(1e-9));
    assertThat(box.getMinimum(1)).isCloseTo(Examples.NORTH, within(1e-9));
    assertThat(box.getMaximum(1)).isCloseTo(Examples.NORTH + 1.5, within(1e-9));
    assertThat(
            CRS.equalsIgnoreMetadata(
                coverage.getCoordinateReferenceSystem(), Examples.CRS.geotools()))
        .isTrue();
  }

  @Test
  void classesAreBytes() throws IOException {
    GridCoverage2D coverage = read(write(Examples.raster("1", "S1", RasterKind.CLS)));
    Raster cells = coverage.getRenderedImage().getData();
    assertThat(cells.getPixels(0, 0, 3, 2, (int[]) null)).containsExactly(1, 2, 3, 255, 0, 254);
    assertThat(CoverageUtilities.getNoDataProperty(coverage).getAsSingleValue()).isEqualTo(255);
  }

  @Test
  void refusesClassesThatNeedMoreThanAByte() {
    for (double value : new double[] {-1, 1.5, 255, 1e9}) {
      org.mottle.engine.grid.Raster raster =
          new org.mottle.engine.grid.Raster(new CellGrid(0, 1, 1, 1, 1), new double[] {value});
      assertThatThrownBy(() -> write(new NamedRaster("7", "S1", RasterKind.CLS, raster)))
          .hasMessage("raster cls of green 7 holds whole numbers from 0 to 254, was " + value);
    }
  }

  @Test
  void holdsTheRecordOfTheRun() throws IOException {
    String text =
        Files.readString(
            write(Examples.raster("<1>", "S&1", RasterKind.SD)),
            java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(text)
        .contains("<Item name=\"green_id\">&lt;1&gt;</Item>")
        .contains("<Item name=\"surv_id\">S&amp;amp;1</Item>")
        .contains("<Item name=\"run_id\">run-0001</Item>")
        .contains("\"seed\":\"20250514\"")
        .contains("role=\"unittype\">% by volume</Item>");
  }

  /** Dutch, British and French national grids, of three methods, and a code of 15 bits. */
  @Test
  void namesTheCrsByItsCode() throws IOException {
    for (int epsg : new int[] {28992, 27700, 2154, 32760}) {
      Crs crs = Crs.ofEpsg(epsg);
      Path file = folder.resolve(epsg + ".tif");
      new GeoTiffWriter(crs, Examples.provenance())
          .write(file, Examples.raster("1", "S1", RasterKind.VWC));
      assertThat(GeoTiffWriter.refusal(crs)).isEmpty();
      GeoTiffReader reader =
          new GeoTiffReader(
              file.toFile(), new Hints(Hints.DEFAULT_COORDINATE_REFERENCE_SYSTEM, crs.geotools()));
      GeoTiffIIOMetadataDecoder keys = reader.getMetadata();
      assertThat(keys.getGeoKey(3072)).as("ProjectedCSTypeGeoKey").isEqualTo("" + epsg);
      assertThat(keys.getGeoKey(1025)).as("pixel is area").isEqualTo("1");
      assertThat(keys.getGeoKey(1026)).as("citation").isEqualTo(crs.name());
      reader.dispose();
    }
  }

  @Test
  void replacesALongerFile() throws IOException {
    Path file = folder.resolve("sd.tif");
    Files.write(file, new byte[100_000]);
    write(Examples.raster("1", "S1", RasterKind.SD));
    assertThat(Files.size(file)).isLessThan(10_000);
  }

  @Test
  void sameRasterSameBytes() throws IOException {
    byte[] first = Files.readAllBytes(write(Examples.raster("1", "S1", RasterKind.VWC)));
    byte[] second = Files.readAllBytes(write(Examples.raster("1", "S1", RasterKind.VWC)));
    assertThat(second).isEqualTo(first);
  }
}
