package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/** How far places lie from an outline, holes included: positive inside, negative outside, m. */
public final class EdgeDistance {
  private final Geometry outline;
  private final List<Coordinate[]> rings = new ArrayList<>();

  public EdgeDistance(Geometry outline) {
    this.outline = outline;
    for (Object ring : LinearComponentExtracter.getLines(outline)) {
      rings.add(((LineString) ring).getCoordinates());
    }
  }

  public double at(double x, double y) {
    Coordinate place = new Coordinate(x, y);
    double distance = Double.POSITIVE_INFINITY;
    for (Coordinate[] ring : rings) {
      distance = Math.min(distance, Distance.pointToSegmentString(place, ring));
    }
    boolean outside = SimplePointInAreaLocator.locate(place, outline) == Location.EXTERIOR;
    return outside ? -distance : distance;
  }
}
