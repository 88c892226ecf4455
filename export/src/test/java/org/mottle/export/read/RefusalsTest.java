package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** Wrong inputs, each with the exact lines a user sees. */
class RefusalsTest {
  private static final InputOptions UTM = InputOptions.NONE.withCrs(Crs.utm(28, true));

  @TempDir Path folder;

  private static List<String> lines(Runnable action) {
    InputRefused refused = catchThrowableOfType(InputRefused.class, action::run);
    assertThat(refused).as("nothing was refused").isNotNull();
    return refused.lines();
  }

  private List<String> greens(String name, String text) {
    String file = TestFiles.write(folder, name, text);
    return lines(() -> GreensReader.read(file, InputOptions.NONE, Optional.empty()));
  }

  private Greens twoGreens() {
    String text =
        TestFiles.inUtm28(
            TestFiles.greens(
                "\"1\"", TestFiles.square(500000, 5316300, 20),
                "\"2\"", TestFiles.square(500100, 5316300, 20)));
    return GreensReader.read(
        TestFiles.write(folder, "greens.geojson", text), InputOptions.NONE, Optional.empty());
  }

  private List<String> readings(String text, InputOptions options) {
    String file = TestFiles.write(folder, "r.csv", text);
    Greens greens = twoGreens();
    return lines(() -> ReadingsReader.read(file, options, greens));
  }

  @Test
  void filesThatAreNotThereOrNotWhatTheySay() {
    String missing = folder.resolve("none.geojson").toString();
    assertThat(lines(() -> FeatureFile.read(missing, UTM)))
        .containsExactly(missing + ": no such file");
    String empty = TestFiles.write(folder, "empty.csv", "");
    assertThat(lines(() -> FeatureFile.read(empty, UTM))).containsExactly("empty.csv is empty");
    String foreign = TestFiles.write(folder, "notes.docx", "x");
    assertThat(lines(() -> FeatureFile.read(foreign, UTM)))
        .containsExactly(
            "notes.docx: not a format that is read here; give GeoJSON (.geojson), GeoPackage (.gpkg), shapefile (.shp), CSV (.csv) or GPX (.gpx)");
    for (String ending : List.of("gpkg", "shp")) {
      String file = TestFiles.write(folder, "fake." + ending, "this is a text".repeat(20));
      assertThat(lines(() -> FeatureFile.read(file, UTM)))
          .containsExactly(
              "fake.%s is not a %s: it does not start as one"
                  .formatted(ending, ending.equals("shp") ? "shapefile" : "GeoPackage"));
    }
    String binary =
        TestFiles.write(
            folder,
            "image.csv",
            new byte[] {
              (byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13, 'I', 'H', 'D', 'R'
            });
    assertThat(lines(() -> FeatureFile.read(binary, UTM)))
        .containsExactly("image.csv is not a text file; give CSV");
    String gpx = TestFiles.write(folder, "t.gpx", "<gpx version=\"1.1\" creator=\"t\"></gpx>");
    assertThat(lines(() -> FeatureFile.read(gpx, UTM)))
        .containsExactly(
            "t.gpx holds no waypoints (0 tracks, 0 routes); store the stations as waypoints");
  }

  @Test
  void filesThatWereCutOff() throws IOException {
    byte[] gpkg = Files.readAllBytes(TestFiles.resource("validation/sample.gpkg"));
    String cut = TestFiles.write(folder, "cut.gpkg", Arrays.copyOf(gpkg, 50_000));
    assertThat(lines(() -> FeatureFile.read(cut, UTM)))
        .containsExactly(
            "cut.gpkg is cut off: 50000 of its %d bytes are there; copy it again"
                .formatted(gpkg.length));
    byte[] shp = Files.readAllBytes(TestFiles.resource("validation/sample_shp/samples.shp"));
    String cutShp = TestFiles.write(folder, "cut.shp", Arrays.copyOf(shp, 130));
    assertThat(lines(() -> FeatureFile.read(cutShp, UTM)))
        .containsExactly("cut.shp is cut off: 130 of its 156 bytes are there; copy it again");
    assertThat(greens("cut.geojson", "{\"type\":\"FeatureCollection\",\"features\":[\n{\"type\":"))
        .containsExactly(
            "cut.geojson ends before its JSON does (line 2, column 9): the file is cut off");
  }

  @Test
  void jsonThatIsBrokenOrNotGeoJson() {
    assertThat(greens("a.geojson", "{\"type\":,}"))
        .singleElement()
        .asString()
        .startsWith("a.geojson is not sound JSON at line 1, column 9: ");
    assertThat(greens("a.geojson", "[1,2]"))
        .containsExactly(
            "a.geojson is JSON but not GeoJSON: it has no \"type\"; give a FeatureCollection");
    assertThat(greens("a.geojson", "{\"type\":\"Topology\"}"))
        .containsExactly("a.geojson: 'Topology' is no GeoJSON type; give a FeatureCollection");
    assertThat(greens("a.geojson", "{\"type\":\"FeatureCollection\",\"features\":[]}"))
        .containsExactly("a.geojson holds no features");
  }

  @Test
  void outlinesWithFaultsAreNamedAllAtOnceWithThePlace() {
    String bow =
        "[[500000,5316300],[500020,5316320],[500020,5316300],[500000,5316320],[500000,5316300]]";
    String text =
        TestFiles.inUtm28(
            TestFiles.greens(
                    "\"1\"",
                    bow,
                    "\"1\"",
                    TestFiles.square(500100, 5316300, 20),
                    "null",
                    TestFiles.square(500200, 5316300, 20))
                .replace(
                    "]}}]}",
                    "]}},{\"type\":\"Feature\",\"properties\":{\"green_id\":4},\"geometry\":null},"
                        + "{\"type\":\"Feature\",\"properties\":{\"green_id\":5},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[]}},"
                        + "{\"type\":\"Feature\",\"properties\":{\"green_id\":6},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[500000,5316300],[500020,5316320]]}}]}"));
    assertThat(greens("g.geojson", text))
        .containsExactly(
            "g.geojson: green 1 stands in features 1, 2; make its parts one multipolygon, or give each its own id",
            "g.geojson: green_id is empty in feature 3; name every green",
            "g.geojson, feature 1 (green 1): its outline crosses itself at x 500010.00, y 5316310.00; correct it there",
            "g.geojson, feature 4 (green 4): has no geometry; draw its outline or leave it out",
            "g.geojson, feature 5 (green 5): its outline is empty; draw it or leave it out",
            "g.geojson, feature 6 (green 6): its outline is a LineString; an outline must be a polygon");
  }

  @Test
  void ringsThatAreNoRings() {
    String open = "[[500000,5316300],[500020,5316300],[500020,5316320],[500000,5316320]]";
    String flat = "[[500000,5316300],[500020,5316300],[500000,5316300]]";
    assertThat(
            greens(
                "g.geojson",
                TestFiles.inUtm28(TestFiles.greens("1", open, "2", flat, "3", "[[\"a\",1]]"))))
        .containsExactly(
            "g.geojson, feature 1: ring 1 is not closed: it starts at (500000.0, 5316300.0) and ends at (500000.0, 5316320.0); repeat the first position at its end",
            "g.geojson, feature 2: ring 1 has 3 positions; a ring needs at least 4, the first repeated at the end",
            "g.geojson, feature 3: '[a, 1]' is no position; give [x, y] in numbers");
  }

  @Test
  void greensWithoutIds() {
    String text =
        TestFiles.inUtm28(
                TestFiles.greens(
                    "1",
                    TestFiles.square(500000, 5316300, 20),
                    "2",
                    TestFiles.square(500100, 5316300, 20)))
            .replace("green_id", "Nummer");
    assertThat(greens("g.geojson", text))
        .containsExactly(
            "g.geojson has no column green_id; its columns are Nummer: map the one that names the greens in the settings, like columns: {green_id: Green}");
  }

  @Test
  void degreesTakenForMetresAndTheOtherWayRound() {
    assertThat(
            greens(
                "g.geojson",
                TestFiles.inUtm28(TestFiles.greens("1", TestFiles.square(-14.9999, 48, 0.001)))))
        .containsExactly(
            "g.geojson, feature 1 (green 1): x -14.9999, y 48 looks like degrees, not like EPSG:32628 (WGS 84 / UTM zone 28N); name the CRS it is in with --crs (EPSG:4326 for longitude and latitude)");
    assertThat(
            readings("lon,lat,vwc_raw\n500001,5316302,18\n500002,5316303,19\n", InputOptions.NONE))
        .containsExactly(
            "r.csv, row 2: x 500001, y 5316302 cannot be longitude and latitude in degrees; name the projected CRS it is in with --crs (and 1 more row)");
  }

  @Test
  void workingInDegreesOrFeet() {
    String file = TestFiles.path("read/source.geojson");
    assertThat(lines(() -> GreensReader.read(file, InputOptions.NONE, Optional.of(Crs.wgs84()))))
        .containsExactly(
            "the working CRS EPSG:4326 (WGS 84) is in degrees; name a projected CRS in metres with --working-crs, such as the UTM zone");
    assertThat(
            lines(() -> GreensReader.read(file, InputOptions.NONE, Optional.of(Crs.ofEpsg(2227)))))
        .containsExactly(
            "the working CRS EPSG:2227 (NAD83 / California zone 3 (ftUS)) is in units of 0.3048006096012192 m; name a projected CRS in metres with --working-crs, such as the UTM zone");
  }

  @Test
  void shapefilesWithoutDescriptionOrWithAnUnknownOne() throws IOException {
    for (String ending : new String[] {"shp", "dbf"}) {
      Files.copy(
          TestFiles.resource("validation/sample_shp/samples." + ending),
          folder.resolve("p." + ending));
    }
    String file = folder.resolve("p.shp").toString();
    assertThat(lines(() -> FeatureFile.read(file, InputOptions.NONE)))
        .containsExactly(
            "p.shp comes without a .prj; name its CRS with --crs, like --crs EPSG:32630");
    TestFiles.write(folder, "p.prj", "LOCAL_CS[\"site grid\"]");
    assertThat(lines(() -> FeatureFile.read(file, InputOptions.NONE)))
        .containsExactly(
            "p.prj: the CRS description 'LOCAL_CS[\"site grid\"]' is neither projected nor geographic; name the CRS by its EPSG code with --crs");
    assertThat(FeatureFile.read(file, UTM).crs()).contains(Crs.utm(28, true));
    Files.copy(
        TestFiles.resource("read/shp/utf8.dbf"),
        folder.resolve("p.dbf"),
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    assertThat(lines(() -> FeatureFile.read(file, UTM)))
        .containsExactly("p.shp holds 2 shapes but its .dbf 3 rows; export it again");
  }

  @Test
  void textAndGapsInNumberColumnsAreCountedByColumn() {
    String text =
        "green_id,x,y,seq,vwc_raw,rod_mm,role,used\n1,500001,5316301,1,wet,60,plan,1\n1,500002,5316302,2.5,18,long,pln,maybe\n1,,5316303,3,19,60,poi,0\n";
    assertThat(readings(text, UTM))
        .containsExactly(
            "r.csv: seq is not a whole number in row 3 (2.5)",
            "r.csv: vwc_raw is not a number in row 2 ('wet')",
            "r.csv: rod_mm is not a number in row 3 ('long')",
            "r.csv: role is none of plan, pair, poi, ctrl, infill in row 3 ('pln')",
            "r.csv: used is neither 1 nor 0 in row 3 ('maybe')",
            "r.csv: no position in row 4; give one or leave them out");
  }

  @Test
  void manyFaultsAreCapped() {
    String rows =
        IntStream.range(0, 45)
            .mapToObj(i -> "1,500001,5316301,bad\n")
            .collect(Collectors.joining());
    assertThat(readings("green_id,x,y,vwc_raw\n" + rows, UTM))
        .containsExactly(
            "r.csv: vwc_raw is not a number in rows 2 ('bad'), 3 ('bad'), 4 ('bad'), 5 ('bad'), 6 ('bad'), 7 ('bad'), 8 ('bad'), 9 ('bad') and 37 more");
  }

  @Test
  void missingValuesAndNaN() {
    assertThat(
            readings("x,y,vwc_raw\n500001,5316301,NaN\n500002,5316301,\n500003,5316301,18\n", UTM))
        .containsExactly(
            "r.csv: no value of vwc_raw in rows 2, 3; fill them in or delete the rows");
  }

  @Test
  void fractionsAreAskedAbout() {
    String text = "x,y,vwc_raw\n500001,5316301,0.18\n500002,5316301,0.21\n";
    assertThat(readings(text, UTM))
        .containsExactly(
            "r.csv: all 2 values of vwc_raw are below 1, the largest 0.21: fractions or % by volume? Say so in the settings, with unit: fraction or unit: percent");
    String file = TestFiles.write(folder, "r.csv", text);
    Readings asFractions =
        ReadingsReader.read(
            file, UTM.withMoistureUnit(InputOptions.MoistureUnit.FRACTION), twoGreens());
    assertThat(asFractions.readings().get(1).pct()).isEqualTo(21);
    Readings asPercent =
        ReadingsReader.read(
            file, UTM.withMoistureUnit(InputOptions.MoistureUnit.PERCENT), twoGreens());
    assertThat(asPercent.readings().get(1).pct()).isEqualTo(0.21);
  }

  @Test
  void columnsThatAreNotThere() {
    assertThat(readings("x,y,Moisture %\n500001,5316301,18\n", UTM))
        .containsExactly(
            "r.csv has no column vwc_raw; its columns are x, y, Moisture %: map the one that holds the moisture in the settings, like columns: {vwc_raw: \"Moisture %\"}");
    assertThat(
            readings(
                "x,y,Moisture %\n500001,5316301,18\n", UTM.withColumns(Map.of("vwc_raw", "VWC"))))
        .containsExactly(
            "r.csv has no column 'VWC' (mapped to vwc_raw); its columns are x, y, Moisture %");
    assertThat(readings("a,b,vwc_raw\n500001,5316301,18\n", UTM))
        .containsExactly(
            "r.csv has no columns for the position; its columns are a, b, vwc_raw: name them x, y or lon, lat, or map them in the settings, like columns: {x: Easting, y: Northing}");
  }

  @Test
  void aMappingMeantForTheReadingsDoesNotStandInTheWayOfTheGreens() {
    String file =
        TestFiles.write(
            folder,
            "g.geojson",
            TestFiles.inUtm28(
                TestFiles.greens(
                    "1", TestFiles.square(500000, 5316300, 20),
                    "2", TestFiles.square(500100, 5316300, 20))));
    InputOptions options =
        InputOptions.NONE.withColumns(Map.of("green_id", "Bahn", "vwc_raw", "Moisture %"));
    assertThat(GreensReader.read(file, options, Optional.empty()).greens()).hasSize(2);
    assertThat(
            readings(
                "x,y,soil,vwc_raw\n500001,5316301,14,18\n",
                UTM.withColumns(Map.of("soil_c", "Soil", "rod_mm", "Rod"))))
        .containsExactly(
            "r.csv has no column 'Rod' (mapped to rod_mm); its columns are x, y, soil, vwc_raw");
  }

  @Test
  void greensThatAreNotThere() {
    assertThat(
            readings(
                "green_id,x,y,vwc_raw\n7,500001,5316301,18\n1,500001,5316301,18\n7,500002,5316301,18\n",
                UTM))
        .containsExactly(
            "r.csv: green 7 (rows 2, 4) is not in greens.geojson, whose greens are 1, 2; correct the name or leave the rows out");
  }

  @Test
  void nothingInAnyGreen() {
    assertThat(readings("x,y,vwc_raw\n500030,5316301,18\n500050,5316301,18\n", UTM))
        .containsExactly(
            "r.csv: none of its 2 readings lies in a green of greens.geojson; the nearest, row 2, is 10.0 m from green 1: check the CRS (--crs) of both files");
  }

  @Test
  void aWrongCrsIsSeenByItsAreaOfUse() {
    assertThat(
            readings(
                "x,y,vwc_raw\n100001,316301,18\n", InputOptions.NONE.withCrs(Crs.utm(30, true))))
        .containsExactly(
            "r.csv, row 2: x 100001, y 316301 is outside the area of use of EPSG:32628 (WGS 84 / UTM zone 28N), which is 18.0W to 12.0W, 0.0N to 84.0N; name the right CRS");
  }
}
