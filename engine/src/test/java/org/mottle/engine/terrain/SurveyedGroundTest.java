package org.mottle.engine.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.contour.IsoLine;

/** Points to a grid, surrounds, and contours. */
class SurveyedGroundTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  @Test
  void a_plane_through_points_is_the_plane_within_the_hull_and_void_beyond() {
    Random random = new Random(2);
    double[] x = new double[400];
    double[] y = new double[400];
    double[] z = new double[400];
    Coordinate[] all = new Coordinate[400];
    for (int i = 0; i < 400; i++) {
      double r = 15 * Math.sqrt(random.nextDouble());
      double turn = 2 * Math.PI * random.nextDouble();
      x[i] = 100 + r * Math.cos(turn);
      y[i] = 200 + r * Math.sin(turn);
      z[i] = 7 + 0.02 * x[i] - 0.05 * y[i];
      all[i] = new Coordinate(x[i], y[i]);
    }
    SurveyedPoints.Gridded gridded =
        assertInstanceOf(SurveyedPoints.Gridded.class, SurveyedPoints.grid(x, y, z, 0.5, 6));
    Geometry hull = FACTORY.createMultiPointFromCoords(all).convexHull();
    ElevationModel model = gridded.model();
    int known = 0;
    for (int i = 0; i < model.grid().size(); i++) {
      double cx = model.grid().x(i % model.grid().columns());
      double cy = model.grid().y(i / model.grid().columns());
      if (model.has(i)) {
        known++;
        assertEquals(7 + 0.02 * cx - 0.05 * cy, model.height(i), 1e-9);
      }
      boolean within = hull.covers(FACTORY.createPoint(new Coordinate(cx, cy)));
      assertTrue(within || !model.has(i), "no height beyond the hull");
    }
    assertEquals(hull.getArea(), known * 0.25, 0.03 * hull.getArea());
    assertEquals(400, gridded.places() + gridded.merged());
  }

  @Test
  void points_that_cannot_carry_a_surface_are_refused_with_reason_and_remedy() {
    double[] few = {0, 1, 2};
    assertTrue(refusal(few, new double[] {0, 1, 0}, few, 5).reason().startsWith("3 different"));
    double[] line = new double[20];
    double[] wideX = new double[20];
    double[] wideY = new double[20];
    for (int i = 0; i < 20; i++) {
      line[i] = i;
      wideX[i] = 30 * (i % 5);
      wideY[i] = 30 * (i / 5);
    }
    assertTrue(refusal(line, line, line, 5).reason().contains("in one line"));
    SurveyedPoints.NotGridded wide = refusal(wideX, wideY, line, 5);
    assertTrue(wide.reason().contains("wider than the 2.5 m"), wide.reason());
    assertTrue(!wide.remedy().isEmpty());
  }

  private static SurveyedPoints.NotGridded refusal(
      double[] x, double[] y, double[] z, double widest) {
    return assertInstanceOf(
        SurveyedPoints.NotGridded.class, SurveyedPoints.grid(x, y, z, 0.5, widest));
  }

  @Test
  void points_at_one_place_are_averaged_and_gaps_stay_void() {
    double[] x = new double[82];
    double[] y = new double[82];
    double[] z = new double[82];
    int n = 0;
    for (int row = 0; row < 9; row++) {
      for (int column = 0; column < 9; column++, n++) {
        // a gap of 9 m between the fourth and the fifth column
        x[n] = column + (column > 3 ? 8 : 0);
        y[n] = row;
        z[n] = 3;
      }
    }
    x[81] = x[0] + 0.002;
    y[81] = y[0];
    z[81] = 5;
    SurveyedPoints.Gridded gridded =
        assertInstanceOf(SurveyedPoints.Gridded.class, SurveyedPoints.grid(x, y, z, 0.5, 4));
    assertEquals(1, gridded.merged());
    ElevationModel model = gridded.model();
    assertTrue(!model.has(model.cellAt(8.1, 4.1)) && model.has(model.cellAt(2.1, 4.1)));
    double corner = model.height(model.cellAt(0.2, 0.2));
    assertTrue(corner > 3 && corner < 4, "towards the mean of 4, was " + corner);
  }

  @Test
  void surrounds_are_measured_to_the_nearest_edge_or_void() {
    ElevationModel model = Grounds.of(200, 200, 0.5, (x, y) -> 0.01 * x);
    Geometry green = FACTORY.toGeometry(new Envelope(40, 62, 45, 60));
    Surrounds near = Surrounds.of(model, green);
    assertEquals(38, near.reachM(), 1e-12);
    assertTrue(near.enough() && near.words().isEmpty());
    Geometry close = FACTORY.toGeometry(new Envelope(8, 62, 45, 60));
    Surrounds short8 = Surrounds.of(model, close);
    assertTrue(!short8.enough());
    assertTrue(short8.words().startsWith("the elevation reaches 8.0 m beyond the outline, 30 m"));
    ElevationModel holed =
        Grounds.of(200, 200, 0.5, (x, y) -> x == 30.25 && y == 50.25 ? Double.NaN : 1);
    Surrounds hole = Surrounds.of(holed, green);
    assertEquals(9.75, hole.reachM(), 1e-9);
    assertEquals(1, hole.voidsAround());
    ElevationModel inside =
        Grounds.of(200, 200, 0.5, (x, y) -> x == 50.25 && y == 50.25 ? Double.NaN : 1);
    assertEquals(0, Surrounds.of(inside, green).reachM());
    assertEquals(1, Surrounds.of(inside, green).voidsWithin());
    Geometry beyond = FACTORY.toGeometry(new Envelope(-5, 20, 45, 60));
    assertEquals(0, Surrounds.of(model, beyond).reachM());
  }

  /** A plane of 2 % to the east has a contour every 2.5 m, straight, of the area's height. */
  @Test
  void contours_of_a_plane_are_straight_and_2_5_m_apart() {
    ElevationModel plane = Grounds.of(100, 100, 0.25, (x, y) -> 12.001 + 0.02 * x);
    Geometry area = FACTORY.toGeometry(new Envelope(5, 20, 6, 18));
    List<IsoLine> lines = ElevationContours.of(plane, area);
    assertEquals(6, lines.size());
    for (IsoLine line : lines) {
      assertEquals(12, line.geometry().getLength(), 0.01);
      assertEquals((line.level() - 12.001) / 0.02, line.geometry().getCoordinate().x, 0.01);
    }
  }
}
