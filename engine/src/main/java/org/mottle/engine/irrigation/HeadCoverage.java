package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.mottle.engine.survey.Green;

/**
 * Which heads reach which part of a green, by radius and arc alone: no wind, no pressure, no slope.
 * Outline and arcs are noded together, so that the parts tile the green and share their edges
 * vertex for vertex; chords keep an arc of 17 m within 3 mm.
 *
 * <p>The theoretical rate of a part is the sum of rate / π over its heads. A rate is stated for
 * heads in a square at the distance of their radius (head to head), where π heads reach a place on
 * average; one head alone is taken to lay down its share evenly over its sector. Nozzles do not do
 * that: it is a figure for comparison, not for run times. Immutable.
 *
 * @param green the ground
 * @param parts that tile it; one for each set of heads
 * @param spacing one a head, in the order given
 */
public record HeadCoverage(Green green, List<Part> parts, List<HeadSpacing> spacing) {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /**
   * Ground that the same heads reach.
   *
   * @param heads in the order given; empty: no head reaches it
   * @param rateMmH theoretical, mm/h; 0 without heads, NaN when a rate is not known
   * @param area polygon or multipolygon, m
   */
  public record Part(List<Head> heads, double rateMmH, Geometry area) {
    public Part {
      heads = List.copyOf(heads);
    }

    public int count() {
      return heads.size();
    }
  }

  public HeadCoverage {
    parts = List.copyOf(parts);
    spacing = List.copyOf(spacing);
  }

  /**
   * @param heads of the green; none: the whole green is reached by none
   */
  public static HeadCoverage of(Green green, List<Head> heads) {
    return new HeadCoverage(green, parts(green, heads), spacing(heads));
  }

  /** Share of the green that n heads reach, by n; they sum to 1. */
  public Map<Integer, Double> shares() {
    double total = parts.stream().mapToDouble(p -> p.area().getArea()).sum();
    Map<Integer, Double> shares = new TreeMap<>();
    for (Part part : parts) {
      shares.merge(part.count(), part.area().getArea() / total, Double::sum);
    }
    return shares;
  }

  /** Area-weighted mean of the theoretical rate, mm/h; NaN when a rate is not known. */
  public double meanRateMmH() {
    double total = 0;
    double sum = 0;
    for (Part part : parts) {
      total += part.area().getArea();
      sum += part.rateMmH() * part.area().getArea();
    }
    return sum / total;
  }

  /** Number of heads whose throw reaches a place, by the true circle. */
  public static int reaching(List<Head> heads, double x, double y) {
    return (int) heads.stream().filter(h -> h.reaches(x, y)).count();
  }

  private static List<Part> parts(Green green, List<Head> heads) {
    List<IndexedPointInAreaLocator> sectors = new ArrayList<>();
    List<Geometry> lines = new ArrayList<>(List.of(green.outline().getBoundary()));
    for (Head head : heads) {
      Polygon sector = Sector.of(head);
      sectors.add(new IndexedPointInAreaLocator(sector));
      lines.add(sector.getExteriorRing());
    }
    Polygonizer faces = new Polygonizer();
    faces.add(OverlayNGRobust.union(FACTORY.buildGeometry(lines)));
    IndexedPointInAreaLocator outline = new IndexedPointInAreaLocator(green.outline());
    Map<String, List<Polygon>> bySet = new TreeMap<>(Comparator.naturalOrder());
    // the polygonizer hashes by identity: its order, and where rings start, differ between runs
    List<Polygon> ordered = new ArrayList<>();
    faces.getPolygons().forEach(face -> ordered.add((Polygon) ((Geometry) face).norm()));
    ordered.sort(Comparator.naturalOrder());
    for (Polygon face : ordered) {
      Coordinate inside = face.getInteriorPoint().getCoordinate();
      if (outline.locate(inside) == Location.EXTERIOR) {
        continue;
      }
      StringBuilder set = new StringBuilder();
      for (IndexedPointInAreaLocator sector : sectors) {
        set.append(sector.locate(inside) == Location.EXTERIOR ? '0' : '1');
      }
      bySet.computeIfAbsent(set.toString(), k -> new ArrayList<>()).add(face);
    }
    List<Part> parts = new ArrayList<>();
    bySet.forEach((set, polygons) -> parts.add(part(set, polygons, heads)));
    parts.sort(Comparator.comparingInt(Part::count)); // stable: sets stay in order
    return parts;
  }

  private static Part part(String set, List<Polygon> polygons, List<Head> heads) {
    List<Head> own = new ArrayList<>();
    double rate = 0;
    for (int i = 0; i < heads.size(); i++) {
      if (set.charAt(i) == '1') {
        own.add(heads.get(i));
        rate += heads.get(i).rateMmH() / Math.PI;
      }
    }
    return new Part(own, rate, OverlayNGRobust.union(FACTORY.buildGeometry(polygons)).norm());
  }

  private static List<HeadSpacing> spacing(List<Head> heads) {
    List<HeadSpacing> all = new ArrayList<>();
    for (Head head : heads) {
      double nearest = Double.NaN;
      boolean reaches = false;
      int reachedBy = 0;
      for (Head other : heads) {
        if (other == head) {
          continue;
        }
        double distance = Math.hypot(other.x() - head.x(), other.y() - head.y());
        nearest = Double.isNaN(nearest) ? distance : Math.min(nearest, distance);
        reaches |= head.reaches(other.x(), other.y());
        reachedBy += other.reaches(head.x(), head.y()) ? 1 : 0;
      }
      all.add(new HeadSpacing(head, nearest, nearest / head.radiusM(), reaches, reachedBy));
    }
    return all;
  }
}
