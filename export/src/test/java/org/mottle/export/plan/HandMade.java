package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading.Role;
import org.mottle.engine.survey.RootZone;
import org.mottle.export.crs.Crs;

/** Plans made by hand, on the ground of the invented course. */
final class HandMade {
  static final Crs CRS = Crs.utm(28, true);
  static final double EAST = 500_120;
  static final double NORTH = 5_316_380;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private HandMade() {}

  /** An oval of 28 m by 22 m with a hole. */
  static Green green(String id, String name) {
    Geometry disk = FACTORY.createPoint(new Coordinate(0, 0)).buffer(1, 24);
    Geometry oval = AffineTransformation.scaleInstance(14, 11).transform(disk);
    Geometry hole = AffineTransformation.scaleInstance(1.5, 1.2).transform(disk);
    hole = AffineTransformation.translationInstance(4, 1).transform(hole);
    Geometry outline =
        AffineTransformation.translationInstance(EAST, NORTH).transform(oval.difference(hole));
    return new Green(id, name, outline, RootZone.UNKNOWN, Green.Boundary.UNKNOWN);
  }

  /** Rows of stations there and back, the last ones as pairs, three read twice, one control. */
  static GreenPlan plan(String id, String name, int stations, int pairs) {
    List<PlannedStation> list = new ArrayList<>();
    int plain = stations - pairs;
    for (int i = 0; i < plain; i++) {
      int row = i / 5;
      int column = row % 2 == 0 ? i % 5 : 4 - i % 5;
      double x = EAST - 9 + 4.4 * column;
      double y = NORTH - 7 + 14.0 * row / Math.max(1, (plain - 1) / 5);
      list.add(station(list.size() + 1, x, y, Role.PLAN, i % 7 == 1 ? 2 : 1));
      if (list.size() - i - 1 < pairs) {
        list.add(station(list.size() + 1, x + 0.3, y + 0.4, Role.PAIR, 1));
      }
    }
    list.add(new PlannedStation("C1", EAST + 11, NORTH - 3, Role.CONTROL, 5));
    Prospect prospect =
        new Prospect(1.27, "borrowed", 0.98, "t over the stations", List.of("a spot, 8 in 10"));
    return new GreenPlan(
        green(id, name), new StationPlan("base", id, list), "coverage", 1.0, "", prospect);
  }

  private static PlannedStation station(int n, double x, double y, Role role, int insertions) {
    return new PlannedStation(Integer.toString(n), x, y, role, insertions);
  }
}
