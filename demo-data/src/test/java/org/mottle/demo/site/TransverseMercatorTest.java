package org.mottle.demo.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.demo.site.TransverseMercator.Ellipsoid;
import org.mottle.demo.site.TransverseMercator.Grid;

class TransverseMercatorTest {

  private static final Ellipsoid WGS84 = new Ellipsoid(6378137, 298.257223563);

  /** EPSG guidance note 7-2, method 9807, with the scale as the note rounds it. */
  @Test
  void guidanceNoteExample() {
    TransverseMercator grid =
        new TransverseMercator(
            new Ellipsoid(6377563.396, 299.32496), new Grid(49, -2, 0.9996013, 400000, -100000));
    Point p = grid.project(0.5, 50.5);
    assertThat(p.x()).isCloseTo(577274.99, within(0.01));
    assertThat(p.y()).isCloseTo(69740.50, within(0.01));
  }

  /** Eastings and northings computed with PROJ 9.1. */
  @ParameterizedTest
  @CsvSource({
    "-1.5,52.2,-3,0,602513.375101,5784343.574568",
    "-73.9857,40.7484,-75,0,585628.409088,4511322.447496",
    "151.2153,-33.8568,153,10000000,334900.569652,6252288.752888",
    "2.2945,48.8584,3,0,448252.001375,5411954.909947",
    "0,0,3,0,166021.443081,0",
    "6,84,9,0,465005.344939,9329005.182447",
    "11.5,47.3,9,0,688992.720236,5241534.013646"
  })
  void utmThereAndBack(
      double lon, double lat, double meridian, double falseNorthing, double x, double y) {
    TransverseMercator utm =
        new TransverseMercator(WGS84, new Grid(0, meridian, 0.9996, 500000, falseNorthing));
    Point p = utm.project(lon, lat);
    assertThat(p.x()).isCloseTo(x, within(1e-4));
    assertThat(p.y()).isCloseTo(y, within(1e-4));
    Point back = utm.degrees(new Point(x, y));
    assertThat(back.x()).isCloseTo(lon, within(1e-9 / StrictMath.cos(StrictMath.toRadians(lat))));
    assertThat(back.y()).isCloseTo(lat, within(1e-9));
  }

  @Test
  void theCourseLiesAt48North15West() {
    Point p = CoursePlace.PROJECTION.degrees(CoursePlace.ORIGIN);
    assertThat(p.x()).isCloseTo(-15, within(1e-12));
    assertThat(p.y()).isCloseTo(48, within(0.001));
  }
}
