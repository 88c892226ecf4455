package org.mottle.export.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;

class TransverseMercatorTest {

  /** Computed with PROJ 9.1.1 through sf (R 4.2.2); tolerance 1e-4 m. */
  @ParameterizedTest
  @CsvSource({
    "-1.5, 52.2, 32630, 602513.375101, 5784343.574568",
    "-73.9857, 40.7484, 32618, 585628.409088, 4511322.447496",
    "151.2153, -33.8568, 32756, 334900.569652, 6252288.752888",
    "2.2945, 48.8584, 32631, 448252.001375, 5411954.909947",
    "0, 0, 32631, 166021.443081, 0.000000",
    "3, 0, 32631, 500000.000000, 0.000000",
    "6, 84, 32632, 465005.344939, 9329005.182447",
    "5.999, 60, 32631, 667239.081671, 6655202.954237",
    "-179.9, -10, 32701, 182044.572306, 8893189.342878",
    "11.5, 47.3, 32632, 688992.720236, 5241534.013646"
  })
  void utmAgreesWithProj(double lon, double lat, int epsg, double east, double north) {
    Crs utm = Crs.ofEpsg(epsg);
    Coordinate there = CrsTransform.between(Crs.wgs84(), utm).apply(new Coordinate(lon, lat));
    assertThat(there.x).isCloseTo(east, within(1e-4));
    assertThat(there.y).isCloseTo(north, within(1e-4));
    Coordinate back = CrsTransform.between(utm, Crs.wgs84()).apply(there);
    assertThat(back.x).isCloseTo(lon, within(1e-9));
    assertThat(back.y).isCloseTo(lat, within(1e-9));
    assertThat(Crs.utmFor(lon, lat)).isEqualTo(utm);
  }

  /** EPSG guidance note 7-2, method 9807: the note prints E 577274.99 N 69740.50 for 0.9996013. */
  @Test
  void guidanceNoteExample() throws Exception {
    Ellipsoid airy = new Ellipsoid("Airy 1830", 7001, 6377563.396, 299.32496);
    double[] place = {0.5, 50.5};
    var projection = new TransverseMercator(airy, 49, -2, 0.9996013, 400_000, -100_000);
    projection.forward(place);
    assertThat(place[0]).isCloseTo(577274.99, within(0.01));
    assertThat(place[1]).isCloseTo(69740.50, within(0.01));
    projection.inverse(place);
    assertThat(place[0]).isCloseTo(0.5, within(1e-9));
    assertThat(place[1]).isCloseTo(50.5, within(1e-9));
    // with the registered scale factor, by PROJ 9.1.1
    place = new double[] {0.5, 50.5};
    new TransverseMercator(airy, 49, -2, 0.9996012717, 400_000, -100_000).forward(place);
    assertThat(place[0]).isCloseTo(577274.9838, within(2e-4));
    assertThat(place[1]).isCloseTo(69740.4923, within(2e-4));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void thereAndBackIsTheSamePlace(long seed) throws Exception {
    Random random = new Random(seed);
    var projection = new TransverseMercator(Ellipsoid.WGS_84, 0, 9, 0.9996, 500_000, 0);
    for (int i = 0; i < 1000; i++) {
      double lon = 9 + 7 * (random.nextDouble() - 0.5);
      double lat = 168 * (random.nextDouble() - 0.5);
      double[] xy = {lon, lat};
      projection.forward(xy);
      projection.inverse(xy);
      assertThat(xy[0]).as("seed %d, %s, %s", seed, lon, lat).isCloseTo(lon, within(1e-9));
      assertThat(xy[1]).as("seed %d, %s, %s", seed, lon, lat).isCloseTo(lat, within(1e-9));
    }
  }
}
