package org.mottle.export.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.geotools.api.referencing.cs.AxisDirection;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.export.problem.InputRefused;

class CrsTest {

  @ParameterizedTest
  @ValueSource(
      ints = {
        4326, 32630, 32756, 25832, 26918, 28355, 7855, 2193, 27700, 28992, 2154, 2227, 3035, 31467
      })
  void xIsEastAndYIsNorth(int epsg) {
    Crs crs = Crs.ofEpsg(epsg);
    var cs = crs.geotools().getCoordinateSystem();
    assertThat(cs.getAxis(0).getDirection()).isEqualTo(AxisDirection.EAST);
    assertThat(cs.getAxis(1).getDirection()).isEqualTo(AxisDirection.NORTH);
    assertThat(crs.code()).isEqualTo("EPSG:" + epsg);
  }

  @ParameterizedTest
  @ValueSource(
      ints = {
        4326, 32630, 32756, 25832, 26918, 28355, 7855, 2193, 27700, 28992, 2154, 2227, 3035, 31467,
        2056
      })
  void whatIsWrittenBesideAShapefileIsReadBackAsTheSameCode(int epsg) {
    Crs crs = Crs.ofEpsg(epsg);
    assertThat(crs.prj()).doesNotContain("AUTHORITY");
    assertThat(Crs.parse(crs.prj())).isEqualTo(crs);
    assertThat(Crs.parse(crs.wkt())).isEqualTo(crs);
  }

  @ParameterizedTest
  @ValueSource(
      ints = {4326, 4258, 4269, 32630, 32730, 25832, 26918, 28355, 7855, 27700, 28992, 2154})
  void theSpellingIsThatOfGdal(int epsg) {
    String theirs = CrsMatchTest.resource(epsg + ".prj");
    WktNode ours = WktNode.parse(Crs.ofEpsg(epsg).prj());
    WktNode expected = WktNode.parse(theirs);
    assertThat(ours.name()).isEqualTo(expected.name());
    assertThat(ours.find("DATUM").orElseThrow().name())
        .isEqualTo(expected.find("DATUM").orElseThrow().name());
    assertThat(ours.find("GEOGCS").orElseThrow().name())
        .isEqualTo(expected.find("GEOGCS").orElseThrow().name());
    assertThat(ours.find("PROJECTION").map(WktNode::name))
        .isEqualTo(expected.find("PROJECTION").map(WktNode::name));
    assertThat(ours.children("PARAMETER").stream().map(WktNode::name))
        .containsExactlyInAnyOrderElementsOf(
            expected.children("PARAMETER").stream().map(WktNode::name).toList());
  }

  @Test
  void factsOfASystem() {
    Crs utm = Crs.utm(30, true);
    assertThat(utm.name()).isEqualTo("WGS 84 / UTM zone 30N");
    assertThat(utm.isProjected()).isTrue();
    assertThat(utm.metresPerUnit()).isEqualTo(1);
    assertThat(utm.areaOfUse()).isEqualTo(new AreaOfUse(-6, 0, 0, 84));
    assertThat(utm)
        .isEqualTo(Crs.parse("urn:ogc:def:crs:EPSG::32630"))
        .hasToString("EPSG:32630 (WGS 84 / UTM zone 30N)");
    assertThat(Crs.wgs84().isProjected()).isFalse();
    assertThat(Crs.ofEpsg(2227).metresPerUnit()).isCloseTo(1200 / 3937.0, within(1e-12));
    assertThat(Crs.ofEpsg(27700).areaOfUse().contains(-2, 54, 0)).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4326|the working CRS EPSG:4326 (WGS 84) is in degrees; name a projected CRS in metres with --working-crs, such as the UTM zone",
        "2227|the working CRS EPSG:2227 (NAD83 / California zone 3 (ftUS)) is in units of 0.3048006096012192 m; name a projected CRS in metres with --working-crs, such as the UTM zone",
        "3857|the working CRS EPSG:3857 (WGS 84 / Pseudo-Mercator) stretches lengths with latitude; name a projected CRS in metres with --working-crs, such as the UTM zone",
        "3395|the working CRS EPSG:3395 (WGS 84 / World Mercator) stretches lengths with latitude; name a projected CRS in metres with --working-crs, such as the UTM zone"
      })
  void mapsAreNotComputedInJustAnySystem(int epsg, String message) {
    assertThatThrownBy(() -> Crs.ofEpsg(epsg).requireWorking())
        .isInstanceOf(InputRefused.class)
        .hasMessage(message);
  }

  @ParameterizedTest
  @ValueSource(ints = {32630, 27700, 28992, 2154, 3035})
  void nationalGridsInMetresAreFineToWorkIn(int epsg) {
    assertThat(Crs.ofEpsg(epsg).requireWorking().epsg()).isEqualTo(epsg);
  }

  @Test
  void thePolesHaveNoZone() {
    assertThatThrownBy(() -> Crs.utmFor(10, 85))
        .hasMessage(
            "no UTM zone for longitude 10.0, latitude 85.0; UTM covers 80S to 84N: name a projected CRS with --working-crs");
    assertThat(Crs.utmFor(180, 10).epsg()).isEqualTo(32601);
    assertThat(Crs.utmFor(-180, -10).epsg()).isEqualTo(32701);
  }
}
