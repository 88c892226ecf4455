package org.mottle.export.plan;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Route;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.design.PlannedStation;
import org.mottle.export.record.Provenance;

/**
 * Stations for a receiver as GPX 1.1: a waypoint a station, named by green and station since names
 * on a receiver must differ, with the role as its type; and a route a green, in walking order.
 */
final class StationGpx {
  private StationGpx() {}

  static void write(Path file, List<GreenPlan> plans, Degrees degrees) throws IOException {
    GPX.Builder gpx = GPX.builder(Provenance.ENGINE);
    List<Route> walks = new ArrayList<>();
    for (GreenPlan plan : plans) {
      List<WayPoint> points =
          plan.plan().stations().stream().map(s -> point(plan, s, degrees)).toList();
      points.forEach(gpx::addWayPoint);
      walks.add(
          Route.builder()
              .name(plan.green().id())
              .desc("walk over the stations of plan " + plan.plan().planId())
              .points(points)
              .build());
    }
    walks.forEach(gpx::addRoute);
    GPX.Writer.of(new GPX.Writer.Indent(" ")).write(gpx.build(), file);
  }

  private static WayPoint point(GreenPlan plan, PlannedStation s, Degrees degrees) {
    Coordinate place = degrees.of(s);
    String often = s.insertions() == 1 ? "insert once" : "insert " + s.insertions() + " times";
    return WayPoint.builder()
        .lon(place.x)
        .lat(place.y)
        .name(plan.green().id() + "-" + s.id())
        .desc("green " + plan.label() + ", station " + s.id() + ", " + often)
        .type(s.role().code())
        .build();
  }
}
