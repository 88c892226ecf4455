package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.algorithm.Length;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.impl.CoordinateArraySequence;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * The bounded faces of a {@link PlanarMap} as polygons: rings pass no point twice, holes lie in the
 * smallest face that contains them. Shells run counter-clockwise, holes clockwise.
 */
final class Faces {
  /** What lies round everything. */
  static final int UNBOUNDED = -1;

  private static final int FEW = 16;
  private static final int MANY = 64;

  private final List<Face> faces = new ArrayList<>();
  private final int[] faceOfCycle;
  private STRtree byExtent;

  /** A face: its rings in local coordinates. */
  static final class Face {
    private final Coordinate[] shell;
    private final double shellArea;
    private final Envelope extent = new Envelope();
    private final List<Coordinate[]> holes = new ArrayList<>();
    private int asked;
    private PointOnGeometryLocator locator;

    private Face(Coordinate[] shell, double shellArea) {
      this.shell = shell;
      this.shellArea = shellArea;
      for (Coordinate point : shell) {
        extent.expandToInclude(point);
      }
    }

    Coordinate[] shell() {
      return shell;
    }

    List<Coordinate[]> holes() {
      return holes;
    }

    Envelope extent() {
      return extent;
    }

    /** Area, m². */
    double area() {
      double area = shellArea;
      for (Coordinate[] hole : holes) {
        area -= Area.ofRing(hole);
      }
      return area;
    }

    /** Whether it is nowhere much wider than {@code width}, judged by its area and boundary. */
    boolean isSliver(double width) {
      double length = Length.ofLine(new CoordinateArraySequence(shell));
      for (Coordinate[] hole : holes) {
        length += Length.ofLine(new CoordinateArraySequence(hole));
      }
      return 2 * area() < width * length;
    }

    /** Looks at every vertex the first few times, then makes an index. */
    private boolean contains(Coordinate point) {
      if (!extent.contains(point)) {
        return false;
      }
      if (asked++ < FEW) {
        return PointLocation.locateInRing(point, shell) == Location.INTERIOR;
      }
      if (locator == null) {
        locator = new IndexedPointInAreaLocator(new GeometryFactory().createPolygon(shell));
      }
      return locator.locate(point) == Location.INTERIOR;
    }
  }

  Faces(PlanarMap map) {
    int edgeCount = map.edgeCount();
    int cycles = 0;
    for (int half = 0; half < 2 * edgeCount; half++) {
      cycles = Math.max(cycles, map.has(half >> 1) ? map.cycle(half) + 1 : 0);
    }
    this.faceOfCycle = new int[cycles];
    Arrays.fill(faceOfCycle, UNBOUNDED);
    int[] placeOnPath = new int[map.nodeCount()];
    Arrays.fill(placeOnPath, -1);
    boolean[] seen = new boolean[cycles];
    List<Coordinate[]> floating = new ArrayList<>();
    List<Integer> floatingCycle = new ArrayList<>();
    for (int half = 0; half < 2 * edgeCount; half++) {
      if (map.has(half >> 1) && !seen[map.cycle(half)]) {
        seen[map.cycle(half)] = true;
        List<Coordinate[]> holes = addShells(map, half, placeOnPath);
        int face = faceOfCycle[map.cycle(half)];
        if (face != UNBOUNDED) {
          faces.get(face).holes.addAll(holes);
        } else {
          for (Coordinate[] hole : holes) {
            floating.add(hole);
            floatingCycle.add(map.cycle(half));
          }
        }
      }
    }
    for (int i = 0; i < floating.size(); i++) {
      int face = smallestAround(floating.get(i)[0]);
      faceOfCycle[floatingCycle.get(i)] = face;
      if (face != UNBOUNDED) {
        faces.get(face).holes.add(floating.get(i));
      }
    }
  }

  int count() {
    return faces.size();
  }

  /** The face on the left of the half-edges of a cycle, or UNBOUNDED. */
  int ofCycle(int cycle) {
    return faceOfCycle[cycle];
  }

  Face face(int i) {
    return faces.get(i);
  }

  /** A face as a polygon, shifted to where its local coordinates begin. */
  Polygon polygon(int i, GeometryFactory factory, double originX, double originY) {
    Face face = faces.get(i);
    LinearRing[] holes = new LinearRing[face.holes.size()];
    for (int h = 0; h < holes.length; h++) {
      holes[h] = factory.createLinearRing(shifted(face.holes.get(h), originX, originY));
    }
    return factory.createPolygon(
        factory.createLinearRing(shifted(face.shell, originX, originY)), holes);
  }

  private static Coordinate[] shifted(Coordinate[] ring, double originX, double originY) {
    Coordinate[] points = new Coordinate[ring.length];
    for (int i = 0; i < ring.length; i++) {
      points[i] = new Coordinate(ring[i].x + originX, ring[i].y + originY);
    }
    return points;
  }

  /** Cuts a boundary where it passes a node twice; shells become faces, holes are returned. */
  private List<Coordinate[]> addShells(PlanarMap map, int start, int[] placeOnPath) {
    List<Coordinate[]> holes = new ArrayList<>();
    List<Integer> path = new ArrayList<>();
    int half = start;
    do {
      int place = placeOnPath[map.origin(half)];
      if (place >= 0) {
        closeLoop(map, path, place, placeOnPath, holes);
      }
      placeOnPath[map.origin(half)] = path.size();
      path.add(half);
      half = map.next(half);
    } while (half != start);
    closeLoop(map, path, 0, placeOnPath, holes);
    return holes;
  }

  private void closeLoop(
      PlanarMap map, List<Integer> path, int from, int[] placeOnPath, List<Coordinate[]> holes) {
    List<Integer> loop = path.subList(from, path.size());
    Coordinate[] ring = ring(map, loop);
    double clockwiseArea = Area.ofRingSigned(ring);
    if (clockwiseArea < 0) {
      faceOfCycle[map.cycle(loop.get(0))] = faces.size();
      faces.add(new Face(ring, -clockwiseArea));
    } else {
      holes.add(ring);
    }
    for (int half : loop) {
      placeOnPath[map.origin(half)] = -1;
    }
    loop.clear();
  }

  private static Coordinate[] ring(PlanarMap map, List<Integer> loop) {
    List<Coordinate> points = new ArrayList<>();
    for (int half : loop) {
      Coordinate[] along = map.points(half);
      for (int i = 0; i < along.length - 1; i++) {
        points.add((half & 1) == 0 ? along[i] : along[along.length - 1 - i]);
      }
    }
    points.add(points.get(0));
    return points.toArray(Coordinate[]::new);
  }

  private int smallestAround(Coordinate point) {
    int smallest = UNBOUNDED;
    for (int i : candidates(point)) {
      Face face = faces.get(i);
      if ((smallest == UNBOUNDED || face.shellArea < faces.get(smallest).shellArea)
          && face.contains(point)) {
        smallest = i;
      }
    }
    return smallest;
  }

  /** Faces that may contain a point: all when there are few, else by their extent. */
  private List<Integer> candidates(Coordinate point) {
    List<Integer> found = new ArrayList<>();
    if (faces.size() <= MANY) {
      for (int i = 0; i < faces.size(); i++) {
        found.add(i);
      }
      return found;
    }
    if (byExtent == null) {
      byExtent = new STRtree();
      for (int i = 0; i < faces.size(); i++) {
        byExtent.insert(faces.get(i).extent, i);
      }
    }
    byExtent.query(new Envelope(point), item -> found.add((Integer) item));
    return found;
  }
}
