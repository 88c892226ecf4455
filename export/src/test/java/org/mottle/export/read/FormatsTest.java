package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;

/** Files written by GDAL 3.6.2 and sf; see ORIGIN.md beside them. */
class FormatsTest {
  @TempDir Path folder;

  /** Areas computed with GDAL 3.6.2 (GetArea) of the layer in EPSG:32628. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "read/source.geojson",
        "read/old_crs.geojson",
        "read/rfc7946.geojson",
        "read/course.gpkg#green",
        "read/shp/utf8.shp",
        "read/shp/latin1.shp"
      })
  void theSameCourseFromEveryFormat(String file) {
    int hash = file.indexOf('#');
    String path =
        hash < 0
            ? TestFiles.path(file)
            : TestFiles.path(file.substring(0, hash)) + file.substring(hash);
    FeatureTable table = FeatureFile.read(path, InputOptions.NONE);
    assertThat(table.columns()).containsExactly("green_id", "name", "root_mm", "cut_on", "n_st");
    assertThat(table.rows()).hasSize(3);
    assertThat(table.rows().get(0).values().subList(0, 2)).containsExactly("1", "Küste");
    assertThat(Cells.number(table.rows().get(0).values().get(2), false)).isEqualTo(120.5);
    assertThat(table.rows().get(0).values().get(3).toString().replace('/', '-'))
        .isEqualTo("2031-05-02");
    assertThat(Cells.number(table.rows().get(0).values().get(4), false)).isEqualTo(18);
    assertThat(table.rows().get(1).values().get(1)).isEqualTo("Étang");
    assertThat(table.rows().get(1).values().get(2)).isNull();
    assertThat(table.rows().get(1).values().get(4)).isNull();
    assertThat(table.rows().get(2).geometry()).isNull();
    Crs utm = Crs.utm(28, true);
    CrsTransform toUtm = CrsTransform.between(table.crs().orElseThrow(), utm);
    Geometry first = toUtm.apply(table.rows().get(0).geometry());
    Geometry second = toUtm.apply(table.rows().get(1).geometry());
    assertThat(first.getArea()).isCloseTo(912.005221, within(file.contains("7946") ? 0.05 : 1e-3));
    assertThat(second.getArea()).isCloseTo(994.917671, within(file.contains("7946") ? 0.05 : 1e-3));
    assertThat(second.getNumGeometries()).isEqualTo(2);
    assertThat(first.isValid() && second.isValid()).isTrue();
  }

  @Test
  void heightsAreReadOverAndAMissingTableIsTold() {
    FeatureTable table =
        FeatureFile.read(TestFiles.path("read/shp/heights.shp"), InputOptions.NONE);
    assertThat(table.columns()).isEmpty();
    assertThat(table.notes())
        .containsExactly("heights.shp comes without a .dbf: its features have no attributes");
    assertThat(table.rows().get(0).geometry().getArea()).isCloseTo(912.005221, within(1e-3));
  }

  @ParameterizedTest
  @CsvSource({"utf8, UTF-8", "latin1, Windows-1252"})
  void lettersWithoutAnEncodingNamed(String name, String encoding) throws IOException {
    for (String ending : new String[] {"shp", "dbf", "prj"}) {
      Files.copy(
          TestFiles.resource("read/shp/" + name + "." + ending), folder.resolve("p." + ending));
    }
    FeatureTable table = FeatureFile.read(folder.resolve("p.shp").toString(), InputOptions.NONE);
    assertThat(table.rows().get(0).values().get(1)).isEqualTo("Küste");
    assertThat(table.notes())
        .containsExactly("p.dbf names no encoding (.cpg); read as " + encoding);
  }

  @ParameterizedTest
  @ValueSource(strings = {"validation/sample.gpkg", "validation/sample_shp/samples.shp"})
  void samplesOfAnotherWriter(String file) {
    FeatureTable table = FeatureFile.read(TestFiles.path(file), InputOptions.NONE);
    assertThat(table.crs()).contains(Crs.utm(30, true));
    assertThat(table.columns()).containsExactly("id", "vwc");
    assertThat(table.rows()).hasSize(2);
    assertThat(table.rows().get(0).geometry().getCoordinate().x).isEqualTo(500000);
    assertThat(table.rows().get(0).geometry().getCoordinate().y).isEqualTo(5780000);
  }

  @ParameterizedTest
  @ValueSource(ints = {32630, 32730, 27700, 28992, 2154, 2227, 26918, 25832})
  void theDescriptionBesideAShapefileIsMatchedToItsCode(int epsg) throws IOException {
    for (String ending : new String[] {"shp", "dbf"}) {
      Files.copy(
          TestFiles.resource("validation/sample_shp/samples." + ending),
          folder.resolve("p." + ending));
    }
    Files.copy(TestFiles.resource("crs/" + epsg + ".prj"), folder.resolve("p.PRJ"));
    FeatureTable table = FeatureFile.read(folder.resolve("p.shp").toString(), InputOptions.NONE);
    assertThat(table.crs().map(Crs::epsg)).contains(epsg);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "urn:ogc:def:crs:EPSG::32630|32630",
        "EPSG:32630|32630",
        "urn:ogc:def:crs:OGC:1.3:CRS84|4326",
        "OGC:CRS84|4326"
      })
  void theOlderCrsMemberOfGeoJson(String name, int epsg) {
    String file =
        TestFiles.write(
            folder,
            "p.geojson",
            "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\""
                + name
                + "\"}},\"features\":[{\"type\":\"Feature\",\"properties\":{\"a\":[1,2]},\"geometry\":{\"type\":\"Point\",\"coordinates\":[-1.5,52.2,7]}}]}");
    FeatureTable table = FeatureFile.read(file, InputOptions.NONE);
    assertThat(table.crs().map(Crs::epsg)).contains(epsg);
    assertThat(table.rows().get(0).values()).containsExactly("[1, 2]");
    assertThat(table.rows().get(0).geometry().getCoordinate().getZ()).isEqualTo(7);
  }

  @Test
  void aFileThatNamesItsCrsKeepsIt() {
    InputOptions options = InputOptions.NONE.withCrs(Crs.utm(30, true));
    FeatureTable table = FeatureFile.read(TestFiles.path("read/shp/utf8.shp"), options);
    assertThat(table.crs()).contains(Crs.utm(28, true));
    assertThat(table.notes())
        .containsExactly(
            "utf8.shp is in EPSG:32628 (WGS 84 / UTM zone 28N), as it says itself; --crs is for files that name none");
  }

  @Test
  void degreesWithoutCrsMemberAreWgs84WhateverCrsIsGivenForOtherFiles() {
    InputOptions options = InputOptions.NONE.withCrs(Crs.utm(28, true));
    FeatureTable table = FeatureFile.read(TestFiles.path("read/source.geojson"), options);
    assertThat(table.crs()).contains(Crs.wgs84());
    assertThat(table.notes())
        .containsExactly(
            "source.geojson is in WGS 84 (EPSG:4326), as GeoJSON without a crs member is; --crs is for files that are not");
  }

  @Test
  void metresWithoutCrsMemberTakeTheGivenOne() {
    String file =
        TestFiles.write(
            folder, "g.geojson", TestFiles.greens("\"1\"", TestFiles.square(500000, 5316300, 20)));
    assertThatThrownBy(() -> FeatureFile.read(file, InputOptions.NONE))
        .isInstanceOf(InputRefused.class)
        .hasMessage(
            "g.geojson holds coordinates that are not degrees (feature 1: 500000.0, 5316300.0) and names no crs; name its CRS with --crs, like --crs EPSG:32630");
    assertThat(FeatureFile.read(file, InputOptions.NONE.withCrs(Crs.utm(28, true))).crs())
        .contains(Crs.utm(28, true));
  }

  @Test
  void oneLayerOfSeveral() {
    String file = TestFiles.path("read/course.gpkg");
    assertThatThrownBy(() -> FeatureFile.read(file, InputOptions.NONE))
        .hasMessage(
            "course.gpkg has several layers (green, other); name one, like course.gpkg#green");
    assertThat(FeatureFile.read(file, InputOptions.NONE, "green").rows()).hasSize(3);
    assertThat(FeatureFile.read(file + "#other", InputOptions.NONE, "green").rows()).hasSize(1);
    assertThatThrownBy(() -> FeatureFile.read(file + "#grene", InputOptions.NONE))
        .hasMessage("course.gpkg has no layer 'grene'; its layers are green, other");
  }

  @Test
  void waypoints() {
    String file =
        TestFiles.write(
            folder,
            "p.gpx",
            "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"t\" xmlns=\"http://www.topografix.com/GPX/1/1\">"
                + "<wpt lat=\"48.0001\" lon=\"-14.9998\"><ele>40.5</ele><time>2031-05-14T06:30:00Z</time><name>G1-é</name></wpt>"
                + "<wpt lat=\"48.0002\" lon=\"-14.9997\"/></gpx>");
    FeatureTable table = FeatureFile.read(file, InputOptions.NONE);
    assertThat(table.crs()).contains(Crs.wgs84());
    assertThat(table.rows()).hasSize(2);
    assertThat(table.rows().get(0).values())
        .containsExactly("G1-é", "2031-05-14T06:30:00Z", 40.5, null, null);
    assertThat(table.rows().get(0).geometry().getCoordinate().x).isEqualTo(-14.9998);
  }

  @Test
  void theFieldSurveyIsReadAsPublished() {
    Greens greens =
        GreensReader.read(
            TestFiles.path("validation/field/outline.gpkg"), InputOptions.NONE, Optional.empty());
    assertThat(greens.working().epsg()).isEqualTo(28992);
    assertThat(greens.greens()).hasSize(1);
    assertThat(greens.greens().get(0).id()).isEqualTo("flood-plain");
    // computed with sf (R 4.2.2), st_area
    assertThat(greens.greens().get(0).areaM2()).isCloseTo(4964800.000, within(0.01));
    Readings readings =
        ReadingsReader.read(
            TestFiles.path("validation/field/samples.csv"),
            InputOptions.NONE
                .withCrs(Crs.ofEpsg(28992))
                .withColumns(java.util.Map.of("vwc_raw", "om")),
            greens);
    assertThat(readings.readings()).hasSize(153);
    assertThat(readings.outside()).isEmpty();
    assertThat(readings.readings().get(0).pct()).isEqualTo(13.6);
    assertThat(readings.readings().get(0).x()).isEqualTo(181072);
    assertThat(readings.readings().get(0).label().stationId()).isEqualTo("1");
    assertThat(readings.readings().get(0).label().greenId()).isEqualTo("flood-plain");
  }
}
