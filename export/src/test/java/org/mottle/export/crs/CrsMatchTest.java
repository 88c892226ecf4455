package org.mottle.export.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.export.problem.InputRefused;

/**
 * The descriptions in {@code /crs/*.prj} were written by GDAL 3.6.2 ({@code gdalsrsinfo -o wkt_esri
 * EPSG:n}), those in {@code /crs/*.wkt2} by the same with {@code -o wkt2_2019}; in both no code is
 * left in the root.
 */
class CrsMatchTest {

  static String resource(String name) {
    try (var in = CrsMatchTest.class.getResourceAsStream("/crs/" + name)) {
      return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @ValueSource(
      ints = {
        4326, 4258, 4269, 4277, 32630, 32730, 32601, 32760, 25832, 26918, 28355, 7855, 2193, 27700,
        28992, 2154, 2227, 3035, 2180, 31370, 31467, 2056, 29902, 2157
      })
  void findsTheCodeOfADescription(int epsg) {
    assertThat(Crs.parse(resource(epsg + ".prj")).epsg()).isEqualTo(epsg);
  }

  @ParameterizedTest
  @ValueSource(ints = {4326, 32630, 27700, 28992, 2154, 2227})
  void findsTheCodeOfASecondGenerationDescription(int epsg) {
    assertThat(Crs.parse(resource(epsg + ".wkt2")).epsg()).isEqualTo(epsg);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "EPSG:32630|32630",
        "epsg:32630|32630",
        "32630|32630",
        "urn:ogc:def:crs:EPSG::32630|32630",
        "urn:ogc:def:crs:EPSG:9.8.3:25832|25832",
        "urn:x-ogc:def:crs:EPSG:4326|4326",
        "http://www.opengis.net/def/crs/EPSG/0/32756|32756",
        "http://www.opengis.net/gml/srs/epsg.xml#27700|27700",
        "urn:ogc:def:crs:OGC:1.3:CRS84|4326",
        "urn:ogc:def:crs:OGC::CRS84|4326",
        "OGC:CRS84|4326",
        "CRS84|4326",
        "WGS84|4326",
        "WGS 84|4326",
        "http://www.opengis.net/def/crs/OGC/1.3/CRS84|4326"
      })
  void readsTheNamesInUse(String text, int epsg) {
    assertThat(Crs.parse(text).epsg()).isEqualTo(epsg);
  }

  @Test
  void aMethodThatIsNotKnownIsRefused() {
    assertThatThrownBy(() -> Crs.parse(resource("5514.prj")))
        .isInstanceOf(InputRefused.class)
        .hasMessage(
            "the CRS 'S-JTSK_Krovak_East_North' on the datum 'D_S_JTSK' is not one with an EPSG code; name one with --crs");
  }

  @Test
  void aDatumThatIsNotNamedIsAskedForRatherThanGuessed() {
    String prj =
        resource("27700.prj")
            .replace("D_OSGB_1936", "unknown")
            .replace("British_National_Grid", "unknown")
            .replace("GCS_OSGB_1936", "unknown");
    assertThatThrownBy(() -> Crs.parse(prj))
        .hasMessage(
            "the CRS 'unknown' does not say its datum ('unknown'); it could be EPSG:27700 (OSGB36 / British National Grid): name the right one with --crs");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "EPSG:99999|EPSG:99999 is not a known CRS; name one like EPSG:32630 (see epsg.org for codes)",
        "UTM 30|the CRS 'UTM 30' is not understood; name it by its EPSG code, like EPSG:32630",
        "''|the CRS '' is not understood; name it by its EPSG code, like EPSG:32630",
        "+proj=utm +zone=30|the CRS '+proj=utm +zone=30' is a projection string, which leaves the datum open; name it by its EPSG code, like EPSG:32630",
        "PROJCS[\"x\",|the CRS description 'PROJCS[\"x\",' is broken: expected a value at character 12; name the CRS by its EPSG code with --crs",
        "PROJCS[\"x\"]|the CRS description 'x' is broken: it lacks GEOGCS; name the CRS by its EPSG code with --crs",
        "LOCAL_CS[\"site\"]|the CRS description 'LOCAL_CS[\"site\"]' is neither projected nor geographic; name the CRS by its EPSG code with --crs",
        "EPSG:5703|EPSG:5703 (NAVD88 height) is not a CRS of maps with two axes; name its horizontal part",
        "EPSG:2053|the axes of EPSG:2053 (Hartebeesthoek94 / Lo29) run west and south; name a CRS with x east and y north"
      })
  void refusesWhatItDoesNotUnderstand(String text, String message) {
    assertThatThrownBy(() -> Crs.parse(text)).isInstanceOf(InputRefused.class).hasMessage(message);
  }
}
