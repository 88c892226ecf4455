package org.mottle.engine.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.mottle.engine.check.Check;

/**
 * Where on a piece of ground a station may stand: inside the outline, holes left out, and no nearer
 * to its boundary than an inset. Indexed once; a question costs the logarithm of the number of
 * boundary points. One thread at a time.
 */
public final class StationSites {
  private static final GeometryFactory POINTS = new GeometryFactory();

  private final PointOnGeometryLocator locator;
  private final IndexedFacetDistance boundary;
  private final double inset;

  /**
   * @param outline polygon or multipolygon, holes allowed, m
   * @param inset least distance to the boundary, m; 0 for anywhere inside
   */
  public StationSites(Geometry outline, double inset) {
    this.inset = Check.atLeast("inset", inset, 0, "m");
    this.locator = new IndexedPointInAreaLocator(outline);
    this.boundary = new IndexedFacetDistance(outline.getBoundary());
  }

  /** Whether a station may stand here. */
  public boolean allows(double x, double y) {
    Coordinate place = new Coordinate(x, y);
    return locator.locate(place) == Location.INTERIOR
        && (inset == 0 || boundary.distance(POINTS.createPoint(place)) >= inset);
  }

  /** Those of the places at which a station may stand, at least {@code clear} m from the others. */
  public Positions among(Positions places, Positions others, double clear) {
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      if (others.nearest(places.x(i), places.y(i)) >= clear && allows(places.x(i), places.y(i))) {
        kept.add(i);
      }
    }
    return places.pick(kept);
  }
}
