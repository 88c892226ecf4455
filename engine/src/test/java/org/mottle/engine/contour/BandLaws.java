package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.overlayng.CoverageUnion;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.mottle.engine.grid.Raster;

/** What must hold for the bands of any outline and any surface. */
final class BandLaws {
  private BandLaws() {}

  static void check(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    tile(what, outline, bands);
    valuesLieInTheirBand(what, outline, surface, limits, bands);
  }

  static void tile(String what, Geometry outline, List<Band> bands) {
    Geometry[] parts = bands.stream().map(Band::geometry).toArray(Geometry[]::new);
    double area = 0;
    for (Geometry part : parts) {
      assertThat(part.isValid()).as("%s: band is valid", what).isTrue();
      assertThat(part.isEmpty()).as("%s: band is not empty", what).isFalse();
      area += part.getArea();
    }
    assertThat(area).as("%s: areas sum", what).isCloseTo(outline.getArea(), within(0.01));
    Geometry[] findings = CoverageValidator.validate(parts);
    for (Geometry finding : findings) {
      assertThat(finding).as("%s: coverage", what).isNull();
    }
    Geometry union = CoverageUnion.union(outline.getFactory().createGeometryCollection(parts));
    double difference = OverlayNGRobust.overlay(union, outline, OverlayNG.SYMDIFFERENCE).getArea();
    assertThat(difference)
        .as("%s: symmetric difference with the outline", what)
        .isLessThan(1e-6 * outline.getLength());
  }

  private static org.assertj.core.data.Offset<Double> within(double tolerance) {
    return org.assertj.core.data.Offset.offset(tolerance);
  }

  /** Random points more than 3 mm from every band's edge are in the band of their value. */
  static void valuesLieInTheirBand(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    Random random = new Random(7);
    LinearSurface linear = new LinearSurface(surface);
    Envelope extent = outline.getEnvelopeInternal();
    PointOnGeometryLocator[] locators =
        bands.stream()
            .map(b -> new IndexedPointInAreaLocator(b.geometry()))
            .toArray(PointOnGeometryLocator[]::new);
    for (int k = 0; k < 400; k++) {
      Coordinate p =
          new Coordinate(
              extent.getMinX() + random.nextDouble() * extent.getWidth(),
              extent.getMinY() + random.nextDouble() * extent.getHeight());
      double value = linear.value(p.x, p.y);
      double slack = 0;
      for (int corner = 0; corner < 4; corner++) {
        double near =
            linear.value(
                p.x + ((corner & 1) == 0 ? -0.003 : 0.003),
                p.y + ((corner & 2) == 0 ? -0.003 : 0.003));
        slack = Math.max(slack, Math.abs(near - value));
      }
      int hits = 0;
      for (int b = 0; b < locators.length; b++) {
        if (locators[b].locate(p) == Location.INTERIOR) {
          hits++;
          int index = bands.get(b).index();
          if (index == Band.NO_VALUE) {
            continue;
          }
          assertThat(value).as("%s: a band with values has them at %s", what, p).isNotNaN();
          double low = index == 0 ? Double.NEGATIVE_INFINITY : limits[index - 1];
          double high = index == limits.length ? Double.POSITIVE_INFINITY : limits[index];
          assertThat(value)
              .as("%s: value in band %d at %s", what, index, p)
              .isBetween(low - slack - 1e-9, high + slack + 1e-9);
        }
      }
      assertThat(hits).as("%s: bands at %s", what, p).isLessThanOrEqualTo(1);
    }
  }
}
