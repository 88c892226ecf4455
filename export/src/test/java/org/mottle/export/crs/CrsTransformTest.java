package org.mottle.export.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKTReader;
import org.mottle.export.problem.InputRefused;

class CrsTransformTest {

  /**
   * Computed with PROJ 9.1.1 (GDAL 3.6.2, {@code gdaltransform -s_srs EPSG:4326 -t_srs EPSG:n}, no
   * grid files installed). Tolerances: 1 mm on the same ellipsoid; 2 cm where a datum shift by
   * three or seven parameters is rounded on the way; where EPSG has several sets of parameters for
   * a country the two may choose different ones, which is a metre or three.
   */
  @ParameterizedTest
  @CsvSource({
    "27700, -1.5, 52.2, 434269.9024, 255869.7725, 2.5",
    "27700, -4.2, 57.5, 268261.0028, 847667.8821, 2.5",
    "28992, 5.75, 50.98, 180479.0478, 332321.7157, 0.05",
    "28992, 4.9, 52.37, 121819.3652, 487013.7615, 0.05",
    "2154, 2.3, 48.85, 648632.5471, 6861334.0908, 0.006",
    "2154, 7.2, 43.7, 1038479.5287, 6298000.4150, 0.006",
    "25832, 11.5, 47.3, 688992.7202, 5241534.0135, 0.001",
    "26918, -73.9857, 40.7484, 585628.4091, 4511322.4474, 0.001",
    "28355, 147.3, -37.8, 526410.6005, 5816332.6394, 0.001",
    "7856, 151.2153, -33.8568, 334900.5697, 6252288.7530, 0.001",
    "2193, 174.8, -41.3, 1750697.5213, 5426376.6232, 0.001",
    "2227, -122.4, 37.77, 6012526.7333, 2108410.9468, 0.02",
    "31467, 9.0, 48.8, 3500075.3544, 5406946.4439, 3",
    "2056, 8.5, 47.4, 2680120.1818, 1250450.2793, 0.05"
  })
  void nationalGridsAgreeWithProj(
      int epsg, double lon, double lat, double east, double north, double tolerance) {
    Crs crs = Crs.ofEpsg(epsg);
    Coordinate c = CrsTransform.between(Crs.wgs84(), crs).apply(new Coordinate(lon, lat));
    assertThat(c.x).isCloseTo(east, within(tolerance));
    assertThat(c.y).isCloseTo(north, within(tolerance));
    Coordinate back = CrsTransform.between(crs, Crs.wgs84()).apply(c);
    assertThat(back.x).isCloseTo(lon, within(1e-7));
    assertThat(back.y).isCloseTo(lat, within(1e-7));
  }

  @Test
  void withinADatumNothingIsLost() {
    assertThat(CrsTransform.between(Crs.utm(30, true), Crs.wgs84()).accuracyM()).isZero();
    assertThat(CrsTransform.between(Crs.ofEpsg(25832), Crs.wgs84()).accuracyM()).isEqualTo(1);
    assertThat(CrsTransform.between(Crs.ofEpsg(27700), Crs.wgs84()).accuracyM())
        .isBetween(0.5, 25.0);
  }

  @Test
  void betweenTwoZonesOfADatum() {
    Coordinate in30 =
        CrsTransform.between(Crs.wgs84(), Crs.utm(30, true)).apply(new Coordinate(-0.2, 51));
    Coordinate in31 = CrsTransform.between(Crs.utm(30, true), Crs.utm(31, true)).apply(in30);
    Coordinate back = CrsTransform.between(Crs.utm(31, true), Crs.utm(30, true)).apply(in31);
    // GeoTools' series is good to some 0.01 mm at the edge of a zone
    assertThat(back.distance(in30)).isLessThan(1e-4);
  }

  @Test
  void geometriesKeepTheirShapeAndHeights() throws Exception {
    Geometry g =
        new WKTReader()
            .read(
                "POLYGON Z((500000 5316300 40, 500010 5316300 41, 500010 5316310 42, 500000 5316300 40))");
    Geometry degrees = CrsTransform.between(Crs.utm(28, true), Crs.wgs84()).apply(g);
    assertThat(degrees.getCoordinates()[2].getZ()).isEqualTo(42);
    Geometry back = CrsTransform.between(Crs.wgs84(), Crs.utm(28, true)).apply(degrees);
    assertThat(back.equalsExact(g, 1e-7)).isTrue();
    assertThat(g.getCoordinates()[0].x).isEqualTo(500000);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4326|500000|5780000|x 500000, y 5780000 cannot be longitude and latitude in degrees; name the projected CRS it is in with --crs",
        "32630|-1.5|52.2|x -1.5, y 52.2 looks like degrees, not like EPSG:32630 (WGS 84 / UTM zone 30N); name the CRS it is in with --crs (EPSG:4326 for longitude and latitude)",
        "32630|2500000|5780000|x 2500000, y 5780000 is outside what EPSG:32630 (WGS 84 / UTM zone 30N) can hold; name the right CRS",
        "27700|500000|5780000|x 500000, y 5780000 is outside what EPSG:27700 (OSGB36 / British National Grid) can hold; name the right CRS",
        "27700|900000|500000|x 900000, y 500000 is outside the area of use of EPSG:27700 (OSGB36 / British National Grid), which is 9.0W to 2.0E, 49.8N to 61.0N; name the right CRS",
        "32630|NaN|5|x NaN, y 5 is not a place"
      })
  void aPlaceOutsideIsRefused(int epsg, double x, double y, String message) {
    CrsTransform transform = CrsTransform.between(Crs.ofEpsg(epsg), Crs.utm(30, true));
    assertThat(transform.problemAt(x, y)).contains(message);
    assertThatThrownBy(() -> transform.apply(new Coordinate(x, y)))
        .isInstanceOf(InputRefused.class)
        .hasMessage(message);
  }

  @Test
  void theTargetHasItsAreaToo() {
    assertThat(CrsTransform.between(Crs.wgs84(), Crs.utm(30, true)).problemAt(20, 50))
        .contains(
            "x 20, y 50 is outside the area of use of EPSG:32630 (WGS 84 / UTM zone 30N), which is 6.0W to 0.0E, 0.0N to 84.0N; name the right CRS");
    // an area across the 180th meridian
    assertThat(CrsTransform.between(Crs.wgs84(), Crs.ofEpsg(2193)).problemAt(-179.5, -40))
        .isPresent();
    assertThat(CrsTransform.between(Crs.ofEpsg(4167), Crs.wgs84()).problemAt(-179.5, -40))
        .isEmpty();
  }
}
