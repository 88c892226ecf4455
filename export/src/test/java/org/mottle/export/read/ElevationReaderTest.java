package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.CourseGenerator;
import org.mottle.demo.GeneratedCourse;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.GeoTiffWriter;
import org.mottle.export.write.NamedRaster;
import org.mottle.export.write.RasterKind;

/** Elevation in the forms people have it, and in those that must be refused. */
class ElevationReaderTest {
  private static final Crs WORKING = Crs.utm(28, true);
  private static final InputOptions UTM = InputOptions.NONE.withCrs(WORKING);

  /** 3 x 2 cells of 0.5 m that cover the green of one metre square, with 0.5 m more in the east. */
  private static final double[] SIX = {40.125, 41.0625, 42.03125, 43.5, 44.25, 45.75};

  @TempDir Path folder;

  private Greens greens(double... corners) {
    String[] text = new String[corners.length];
    for (int i = 0; i < corners.length; i += 2) {
      text[i] = "\"" + (i / 2 + 1) + "\"";
      text[i + 1] = TestFiles.square(corners[i], corners[i + 1], 1);
    }
    return GreensReader.read(
        TestFiles.write(folder, "g.geojson", TestFiles.inUtm28(TestFiles.greens(text))),
        InputOptions.NONE,
        Optional.empty());
  }

  private Greens one() {
    return greens(500000, 5316000);
  }

  private ElevationSource read(InputOptions options, String... files) {
    return ElevationReader.read(List.of(files), options, ElevationOptions.DEFAULT, one());
  }

  private Elevation near(InputOptions options, String... files) {
    return read(options, files).near(one().greens().get(0)).orElseThrow();
  }

  private static List<String> refused(Runnable reading) {
    InputRefused e = catchThrowableOfType(InputRefused.class, reading::run);
    assertThat(e).as("nothing was refused").isNotNull();
    return e.lines();
  }

  private String tiff(TinyTiff tiff) {
    return TestFiles.write(folder, "d.tif", tiff.bytes());
  }

  private static TinyTiff six() {
    return new TinyTiff(3, 500000, 5316001, SIX);
  }

  private String asc(String text) {
    return TestFiles.write(folder, "d.asc", text);
  }

  private static final String HEADING =
      "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 5316000\ncellsize 0.5\n";

  private static void isSix(Raster raster) {
    CellGrid grid = raster.grid();
    assertThat(grid).isEqualTo(new CellGrid(500000, 5316001, 0.5, 3, 2));
    for (int i = 0; i < 6; i++) {
      assertThat(raster.value(i / 3, i % 3)).isCloseTo(SIX[i], within(1e-9));
    }
  }

  @Test
  void doublesOfAGeoTiffComeBackBitForBit() {
    Elevation elevation = near(InputOptions.NONE, tiff(six()));
    isSix(elevation.raster());
    assertThat(elevation.sources()).containsExactly("d.tif");
    assertThat(elevation.vertical()).isEqualTo("not recorded");
    assertThat(elevation.voidShare()).isZero();
    assertThat(elevation.notes()).isEmpty();
    assertThat(read(InputOptions.NONE, tiff(six())).notes())
        .containsExactly(
            "vertical datum not recorded in d.tif; heights are good for differences only",
            "unit of heights not recorded in d.tif, taken as metres; --elevation-unit ft (or us-ft) if"
                + " they are feet");
  }

  @Test
  void whatIsWrittenHereIsReadHere() throws IOException {
    double[] heights = SIX.clone();
    heights[2] = Double.NaN;
    heights[4] = 123.456789;
    Raster raster = new Raster(new CellGrid(500000, 5316001, 0.5, 3, 2), heights);
    Path file = folder.resolve("own.tif");
    Provenance run = new Provenance("r", "v", Instant.EPOCH, List.of(), Map.of(), 1, "");
    new GeoTiffWriter(WORKING, run).write(file, new NamedRaster("1", "", RasterKind.Z, raster));
    ElevationSource source = read(InputOptions.NONE, file.toString());
    Elevation elevation = source.near(one().greens().get(0)).orElseThrow();
    for (int i = 0; i < 6; i++) {
      // float32 keeps 24 bits: 4e-6 m at 123 m
      assertThat(elevation.raster().value(i)).isEqualTo(Double.valueOf((float) heights[i]));
    }
    assertThat(elevation.voidShare()).isEqualTo(1 / 6.0);
    // the unit is in the metadata, so nothing is asked
    assertThat(source.notes()).noneMatch(n -> n.contains("unit"));
  }

  @Test
  void pixelIsPointLiesHalfACellAway() {
    TinyTiff point = new TinyTiff(3, 500000.25, 5316000.75, SIX).keys(1025, 2, 3072, 32628);
    isSix(near(InputOptions.NONE, tiff(point)).raster());
  }

  @Test
  void theCornerByAMatrixOrByAnotherTiePoint() {
    TinyTiff matrix =
        six()
            .with(33550, null)
            .with(33922, null)
            .with(
                34264,
                new double[] {0.5, 0, 0, 500000, 0, -0.5, 0, 5316001, 0, 0, 0, 0, 0, 0, 0, 1});
    isSix(near(InputOptions.NONE, tiff(matrix)).raster());
    TinyTiff tie = six().with(33922, new double[] {3, 2, 0, 500001.5, 5316000, 0});
    isSix(near(InputOptions.NONE, tiff(tie)).raster());
  }

  @Test
  void feetAreTakenToMetresAndTheDatumIsTold() {
    TinyTiff feet = six().keys(1025, 1, 3072, 32628, 4096, 6360);
    Elevation elevation = near(InputOptions.NONE, tiff(feet));
    assertThat(elevation.raster().value(0)).isCloseTo(40.125 * 1200 / 3937, within(1e-12));
    assertThat(elevation.vertical()).isEqualTo("EPSG:6360");
    assertThat(read(InputOptions.NONE, tiff(feet)).notes())
        .containsExactly("heights in US survey feet in d.tif, taken to metres");
    ElevationOptions asked = ElevationOptions.DEFAULT.withUnit(ElevationUnit.FOOT);
    ElevationSource given = ElevationReader.read(List.of(tiff(six())), UTM, asked, one());
    assertThat(given.near(one().greens().get(0)).orElseThrow().raster().value(1))
        .isCloseTo(41.0625 * 0.3048, within(1e-12));
    // what the file says of itself stands
    ElevationSource own = ElevationReader.read(List.of(tiff(feet)), UTM, asked, one());
    assertThat(own.near(one().greens().get(0)).orElseThrow().raster().value(0))
        .isCloseTo(40.125 * 1200 / 3937, within(1e-12));
    assertThat(own.notes()).anyMatch(n -> n.contains("--elevation-unit is for files"));
  }

  @Test
  void noDataByItsTagOrAsNan() {
    double[] cells = SIX.clone();
    cells[0] = -9999;
    cells[4] = Double.NaN;
    Elevation elevation =
        near(
            InputOptions.NONE,
            tiff(new TinyTiff(3, 500000, 5316001, cells).with(42113, "-9999.000")));
    assertThat(elevation.raster().has(0)).isFalse();
    assertThat(elevation.raster().has(4)).isFalse();
    assertThat(elevation.voidShare()).isEqualTo(2 / 6.0);
    assertThat(elevation.greenVoidShare()).isEqualTo(2 / 4.0);
    assertThat(elevation.notes())
        .containsExactly(
            "green 1: 0.5 m² of it (50.0 %) have no height in d.tif; what is said of the ground"
                + " there leaves them out");
    assertThat(
            refused(() -> read(InputOptions.NONE, tiff(new TinyTiff(3, 500000, 5316001, cells)))))
        .containsExactly(
            "d.tif: 1 cell(s) near the greens out of -500 to 9000 m, the first in row 1, column"
                + " 1 (-9999.0 m); if that stands for no data, declare it, like gdal_translate"
                + " -a_nodata");
  }

  @Test
  void scaledWholeNumbers() {
    String scaled =
        "<GDALMetadata><Item name=\"OFFSET\" sample=\"0\" role=\"offset\">100</Item>"
            + "<Item name=\"SCALE\" sample=\"0\" role=\"scale\">0.5</Item></GDALMetadata>";
    Elevation elevation = near(InputOptions.NONE, tiff(six().with(42112, scaled)));
    assertThat(elevation.raster().value(0)).isEqualTo(100 + 40.125 / 2);
  }

  @Test
  void everyFaultOfATiffIsToldAtOnce() {
    TinyTiff bad =
        six().with(33550, new double[] {0.5, 0.4, 0}).with(279, new long[] {999_999}).keys(1025, 1);
    assertThat(refused(() -> read(InputOptions.NONE, tiff(bad))))
        .hasSize(2)
        .satisfies(
            lines -> {
              assertThat(lines.get(0)).startsWith("d.tif is cut off: it has ");
              assertThat(lines.get(1))
                  .isEqualTo(
                      "d.tif: its cells are 0.5 by 0.4, not square; resample it with gdalwarp -tr 0.5"
                          + " 0.5 -r bilinear");
            });
  }

  @Test
  void whatIsNoElevationIsRefused() {
    double[] turned = {0.4, 0.3, 0, 500000, 0.3, -0.4, 0, 5316001, 0, 0, 0, 0, 0, 0, 0, 1};
    assertThat(refused(() -> read(UTM, tiff(six().with(33550, null).with(34264, turned)))))
        .containsExactly(
            "d.tif is rotated (matrix terms 0.3 and 0.3); straighten it with gdalwarp");
    assertThat(refused(() -> read(UTM, tiff(six().with(33550, null)))).get(0))
        .startsWith("d.tif does not say where it lies");
    assertThat(
            refused(() -> read(UTM, tiff(six().with(33550, new double[] {0.5, -0.5, 0})))).get(0))
        .startsWith("d.tif does not run from west to east and north to south (cell 0.5 by -0.5)");
    assertThat(refused(() -> read(UTM, tiff(six().with(258, new int[] {8})))).get(0))
        .startsWith("d.tif is a picture, not elevation: 1 band(s) of 8 bits");
    assertThat(refused(() -> read(UTM, tiff(six().with(259, new int[] {50000})))).get(0))
        .startsWith("d.tif is compressed by scheme 50000");
    assertThat(refused(() -> read(UTM, tiff(six().with(317, new int[] {2})))).get(0))
        .startsWith("d.tif uses predictor 2");
    assertThat(refused(() -> read(UTM, tiff(six().with(279, new long[] {0})))).get(0))
        .startsWith("d.tif leaves out 1 of its 1 blocks");
    assertThat(refused(() -> read(UTM, TestFiles.write(folder, "p.tif", "not a picture"))))
        .containsExactly(
            "p.tif is not a raster: it begins with neither the mark of a TIFF nor ncols; give a"
                + " GeoTIFF or an ESRI ASCII grid");
    byte[] whole = six().bytes();
    assertThat(
            refused(
                () ->
                    read(
                        UTM,
                        TestFiles.write(folder, "h.tif", Arrays.copyOf(whole, whole.length / 3)))))
        .hasSize(1)
        .allMatch(line -> line.startsWith("h.tif"));
  }

  @Test
  void anotherCrsIsRefusedWithTheWayOut() {
    assertThat(refused(() -> read(UTM, tiff(six().keys(1025, 1, 3072, 32629)))))
        .containsExactly(
            "d.tif is in EPSG:32629 (WGS 84 / UTM zone 29N), the greens are mapped in EPSG:32628 (WGS"
                + " 84 / UTM zone 28N); work in its own with --working-crs EPSG:32629, or reproject"
                + " it with gdalwarp -t_srs EPSG:32628 -r bilinear");
    assertThat(refused(() -> read(UTM, tiff(six().keys(1025, 1, 2048, 4326)))).get(0))
        .endsWith("28N); reproject it with gdalwarp -t_srs EPSG:32628 -r bilinear");
    assertThat(refused(() -> read(InputOptions.NONE, tiff(six().keys(1025, 1)))))
        .containsExactly(
            "d.tif does not say its CRS; name its CRS with --crs, like --crs EPSG:32630");
    isSix(near(UTM, tiff(six().keys(1025, 1))).raster());
  }

  /** A transverse Mercator of nobody's, and the UTM zone by its parameters. */
  @Test
  void aSystemByItsParameters() {
    double[] parameters = {-15, 0, 0.9996, 500000, 0};
    int[] keys = {
      1, 1, 0, 14, 1024, 0, 1, 1, 1025, 0, 1, 1, 2048, 0, 1, 4326, 3072, 0, 1, 32767, 3074, 0, 1,
      32767, 3075, 0, 1, 1, 3076, 0, 1, 9001, 3080, 34736, 1, 0, 3081, 34736, 1, 1, 3092, 34736, 1,
      2, 3082, 34736, 1, 3, 3083, 34736, 1, 4, 1026, 34737, 6, 0, 3073, 34737, 6, 0
    };
    TinyTiff described = six().with(34735, keys).with(34736, parameters).with(34737, "local|");
    isSix(near(InputOptions.NONE, tiff(described)).raster());
    double[] nobodys = {-15.3, 10, 1, 1000, 0};
    TinyTiff odd = six().with(34735, keys).with(34736, nobodys).with(34737, "local|");
    assertThat(refused(() -> read(InputOptions.NONE, tiff(odd))))
        .hasSize(1)
        .allMatch(l -> l.startsWith("d.tif: ") && l.contains("--crs"));
    isSix(near(UTM, tiff(odd)).raster());
  }

  @Test
  void anAsciiGridByItsCornerOrTheCentre() throws IOException {
    String cells = "40.125 41.0625 42.03125\n43.5 44.25 45.75\n";
    isSix(near(UTM, asc(HEADING + "NODATA_value -9999\n" + cells)).raster());
    isSix(
        near(
                UTM,
                asc(
                    "NCOLS 3\r\nNROWS 2\r\nXLLCENTER 500000.25\r\nYLLCENTER 5316000.25\r\nDX 0.5\r\n"
                        + "DY 0.5\r\n40.125 41.0625\r\n42.03125 43.5\r\n4.425e1 +45.75"))
            .raster());
    Files.writeString(folder.resolve("d.PRJ"), WORKING.prj());
    isSix(near(InputOptions.NONE, asc(HEADING + cells)).raster());
    Raster voids = near(UTM, asc(HEADING + "-9999 nan 1\n2 3 4\n")).raster();
    assertThat(voids.values()).containsExactly(Double.NaN, Double.NaN, 1, 2, 3, 4);
    Raster own = near(UTM, asc(HEADING + "nodata_value 0\n0 0.0 1\n2 3 4\n")).raster();
    assertThat(own.values()).containsExactly(Double.NaN, Double.NaN, 1, 2, 3, 4);
  }

  @Test
  void numbersOfEveryLengthAreReadAsTheLanguageReadsThem() {
    String[] numbers = {
      "8.123456789012345678", "0.1", "-0.000000000000000000001", "123.4567", "-.5", "5."
    };
    Raster raster = near(UTM, asc(HEADING + String.join(" ", numbers))).raster();
    for (int i = 0; i < 6; i++) {
      assertThat(raster.value(i)).isEqualTo(Double.parseDouble(numbers[i]));
    }
  }

  @Test
  void hostileAsciiGrids() {
    String cells = "1 2 3\n4 5 6\n";
    assertThat(
            refused(
                () ->
                    read(
                        UTM, asc("ncols -3\nnrows 2.5\nxllcorner 500000,5\ncellsize x\n" + cells))))
        .containsExactly(
            "d.asc: ncols must be a whole number above 0, was -3; correct the heading",
            "d.asc: nrows must be a whole number above 0, was 2.5; correct the heading",
            "d.asc: cellsize is not a number, was 'x'; decimals have a point in this format",
            "d.asc: xllcorner is not a number, was '500000,5'; decimals have a point in this format",
            "d.asc: the heading has no yllcorner; write the grid again");
    assertThat(refused(() -> read(UTM, asc(HEADING + "1 2 3\n4 5\n"))))
        .containsExactly("d.asc ends after 5 of its 6 cells; copy or write it again");
    assertThat(refused(() -> read(UTM, asc(HEADING + "1 2 3\n4 5 6 7\n"))))
        .containsExactly(
            "d.asc holds more than the 3 x 2 cells of its heading, '7' comes next; write the grid"
                + " again");
    assertThat(refused(() -> read(UTM, asc(HEADING + "1 2,5 3\n4 five 6\n"))))
        .containsExactly(
            "d.asc: not a number in row 1, column 2 ('2,5'), row 2, column 2 ('five'); decimals have"
                + " a point in this format");
    assertThat(refused(() -> read(UTM, asc(HEADING + "1 2 3\n4 9999 6\n"))).get(0))
        .startsWith(
            "d.asc: 1 cell(s) near the greens out of -500 to 9000 m, the first in row 2,"
                + " column 2 (9999.0 m)");
    assertThat(
            refused(
                () ->
                    read(
                        UTM,
                        asc("ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ndx 1\ndy 2\n" + cells))))
        .containsExactly(
            "d.asc: its cells are 1.0 by 2.0, not square; resample it with gdalwarp -tr 2.0 2.0 -r"
                + " bilinear");
    assertThat(refused(() -> read(InputOptions.NONE, asc(HEADING + cells))).get(0))
        .isEqualTo("d.asc does not say its CRS; name its CRS with --crs, like --crs EPSG:32630");
    assertThat(refused(() -> read(UTM, asc(HEADING.replace("500000", "600000") + cells))))
        .containsExactly(
            "d.asc has no height at any green: it covers x 600000 to 600002, y 5316000 to 5316001,"
                + " the greens x 500000 to 500001, y 5316000 to 5316001; check file and CRS");
    assertThat(
            refused(() -> read(UTM, asc(HEADING + "1 2 3"), folder.resolve("no.tif").toString())))
        .hasSize(2);
  }

  @Test
  void tilesBecomeOneRaster() {
    // the second begins where the first ends, within the green, and overlaps it by a column
    String west =
        TestFiles.write(folder, "w.asc", HEADING.replace("ncols 3", "ncols 1") + "1\n4\n");
    String east =
        TestFiles.write(
            folder, "e.asc", HEADING.replace("500000", "500000.0") + "-9999 2 3\n44 5 6\n");
    Elevation elevation = near(UTM, west, east);
    // the eastern covers more, so it counts where both have heights
    assertThat(elevation.raster().values()).containsExactly(1, 2, 3, 44, 5, 6);
    assertThat(elevation.sources()).containsExactly("e.asc", "w.asc");
    String odd =
        TestFiles.write(folder, "o.asc", HEADING.replace("500000", "499998.6") + "7 7 7\n7 7 7\n");
    Elevation alone = near(UTM, odd, east);
    assertThat(alone.sources()).containsExactly("e.asc");
    assertThat(alone.notes().get(0))
        .contains("the cells of o.asc do not line up with those of e.asc");
  }

  @Test
  void onlyTheGroundNearTheGreensIsKept() {
    StringBuilder text =
        new StringBuilder(
            "ncols 400\nnrows 300\nxllcorner 499900\nyllcorner 5315900\ncellsize 1\n");
    for (int row = 0; row < 300; row++) {
      for (int column = 0; column < 400; column++) {
        // far from the greens stands what no ground has, and nobody is told
        text.append(row == 299 ? 99999 : row + column / 1000.0).append(' ');
      }
    }
    Greens two = greens(500000, 5316000, 500200, 5316050, 700000, 5316050);
    ElevationSource source =
        ElevationReader.read(
            List.of(asc(text.toString())), UTM, ElevationOptions.DEFAULT.withMargin(10), two);
    Raster first = source.near(two.greens().get(0)).orElseThrow().raster();
    assertThat(first.grid()).isEqualTo(new CellGrid(499990, 5316011, 1, 21, 21));
    assertThat(first.value(0, 0)).isEqualTo(189.090);
    Raster second = source.near(two.greens().get(1)).orElseThrow().raster();
    assertThat(second.grid()).isEqualTo(new CellGrid(500190, 5316061, 1, 21, 21));
    assertThat(second.value(20, 20)).isEqualTo(159.310);
    assertThat(source.near(two.greens().get(2))).isEmpty();
    assertThat(source.notes()).contains("no elevation for green 3");
  }

  @Test
  void pointsWithHeights() {
    String csv =
        "x,y,z_m\n500000,5316000,40.5\n500001,5316001,41\n500002,5316001,\n500900,5316001,2\n";
    String file = TestFiles.write(folder, "p.csv", csv);
    Green green = one().greens().get(0);
    ElevationSource source = read(UTM, file);
    assertThat(source.near(green)).isEmpty();
    ElevationPoints points = source.pointsNear(green).orElseThrow();
    assertThat(points.z()).containsExactly(40.5, 41);
    assertThat(points.x()).containsExactly(500000, 500001);
    assertThat(source.points().orElseThrow().size()).isEqualTo(3);
    assertThat(source.notes()).contains("p.csv: no height in row 4, left out");
    ElevationOptions feet = ElevationOptions.DEFAULT.withUnit(ElevationUnit.FOOT);
    assertThat(ElevationReader.read(List.of(file), UTM, feet, one()).points().orElseThrow().z()[0])
        .isCloseTo(12.3444, within(1e-12));
    assertThat(
            refused(
                () ->
                    read(
                        UTM,
                        TestFiles.write(
                            folder, "q.csv", "x,y,z_m\n500000,5316000,-9999\n1,2,high\n"))))
        .anyMatch(line -> line.startsWith("q.csv: z_m is not a number in row 3"))
        .anyMatch(
            line ->
                line.startsWith(
                    "q.csv: z_m must be a height from -500 to 9000 m, but not in row 2"));
    assertThat(
            refused(() -> read(UTM, TestFiles.write(folder, "q.csv", "x,y,h\n500000,5316000,4\n"))))
        .containsExactly(
            "q.csv has no column z_m with the heights; its columns are x, y, h; map it in the"
                + " settings, like columns: {z_m: Height}");
    assertThat(
            refused(
                () -> read(UTM, TestFiles.write(folder, "q.csv", "x,y,z_m\n600000,5316000,4\n"))))
        .hasSize(1)
        .allMatch(line -> line.startsWith("q.csv has no height at any green"));
  }

  /** The generator's noise is 8 mm and its files have 3 decimals. */
  @Test
  void theElevationOfTheInventedCourse() throws IOException {
    GeneratedCourse course = CourseGenerator.generate(CourseGenerator.DEFAULT_SEED);
    course.writeSmall(folder);
    course.writeLarge(folder);
    List<String> files;
    try (var all = Files.list(folder)) {
      files = all.map(Path::toString).filter(f -> f.endsWith(".asc")).sorted().toList();
    }
    Greens greens =
        GreensReader.read(
            folder.resolve("greens.geojson").toString(), InputOptions.NONE, Optional.of(WORKING));
    ElevationSource source =
        ElevationReader.read(
            files, InputOptions.NONE, ElevationOptions.DEFAULT.withMargin(34), greens);
    for (Green green : greens.greens()) {
      GreenTruth truth = course.season().truth(green.id());
      Elevation elevation = source.near(green).orElseThrow();
      assertThat(elevation.sources().get(0)).isEqualTo("dem_" + green.id() + ".asc");
      assertThat(elevation.greenVoidShare()).isZero();
      CellGrid grid = elevation.raster().grid();
      Point centre = truth.green().world(0, 0);
      double sum = 0;
      double squares = 0;
      int n = 0;
      // its own file reaches everywhere here, so no other may have been taken
      for (int i = 0; i < grid.size(); i++) {
        double x = grid.x(i % grid.columns()) - centre.x();
        double y = grid.y(i / grid.columns()) - centre.y();
        double error = elevation.raster().value(i) - truth.elevation().at(x, y);
        assertThat(Math.abs(error)).as(green.id()).isLessThan(0.05);
        sum += error;
        squares += error * error;
        n++;
      }
      assertThat(sum / n).as(green.id()).isCloseTo(0, within(0.0003));
      assertThat(Math.sqrt(squares / n)).as(green.id()).isCloseTo(0.008, within(0.0001));
    }
  }
}
