package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.EdgeNoding.Edge;
import org.mottle.engine.contour.Faces.Face;
import org.mottle.engine.grid.Raster;

/**
 * Tiles an outline by the value of a surface. Outline and level lines become one arrangement of
 * edges; its faces are classed by the value inside them and joined by class: so the bands are
 * valid, leave no gap, never overlap, and neighbours share their edge vertex for vertex.
 *
 * <p>The surface is {@link LinearSurface}. Ground exactly at a limit belongs to the band above it,
 * at the last of several limits to the band below it: with two limits low and high, "dry" is v &lt;
 * low, "in band" low &le; v &le; high, "wet" v &gt; high. Limits beyond the data draw nothing.
 *
 * <p>Edges inside the outline lie within a fiftieth of a cell and 2 mm of the level line of the
 * surface, their vertices on a lattice of 2^-10 m; the outline's own vertices move by less than 0.1
 * micrometre. A part of a band that is thinner than about 1 mm goes to its neighbour.
 */
public final class Bands {
  private static final int MOST_POINTS = 8;

  private final FacePoint points = new FacePoint();
  private final Contours contours;
  private final Level[] levels;

  Bands(Contours contours, Level[] levels) {
    this.contours = contours;
    this.levels = levels;
  }

  /**
   * The bands of an outline.
   *
   * @param outline valid polygon or multipolygon, holes allowed, m
   * @param surface values at cell centres; where it has none, or does not reach, the ground becomes
   *     the band {@link Band#NO_VALUE}
   * @param limits ascending; none gives one band
   * @return the bands that exist, by ascending index
   */
  public static List<Band> tile(Geometry outline, Raster surface, double[] limits) {
    return Contours.of(outline, surface).bands(limits);
  }

  List<Band> tile() {
    ContourLines lines = new ContourLines(contours);
    List<Chain> cuts = new ArrayList<>();
    for (Level level : levels) {
      cuts.addAll(lines.at(level));
    }
    cuts.addAll(lines.seams());
    List<Edge> edges = EdgeNoding.edges(lines.rings(), cuts);
    PlanarMap all = new PlanarMap(edges);
    FaceClasses classes = new FaceClasses(all, edges, this::classOf, contours.frame().grain());
    List<Edge> kept = new ArrayList<>();
    List<Integer> leftClass = new ArrayList<>();
    List<Integer> rightClass = new ArrayList<>();
    for (int e = 0; e < edges.size(); e++) {
      if (all.has(e) && classes.left(2 * e) != classes.left(2 * e + 1)) {
        kept.add(edges.get(e));
        leftClass.add(classes.left(2 * e));
        rightClass.add(classes.left(2 * e + 1));
      }
    }
    return joined(new PlanarMap(kept), leftClass, rightClass);
  }

  private List<Band> joined(PlanarMap map, List<Integer> leftClass, List<Integer> rightClass) {
    Faces faces = new Faces(map);
    int[] classOfFace = new int[faces.count()];
    Arrays.fill(classOfFace, FaceClasses.OUTSIDE);
    for (int e = 0; e < map.edgeCount(); e++) {
      if (map.has(e)) {
        setClass(classOfFace, faces.ofCycle(map.cycle(2 * e)), leftClass.get(e));
        setClass(classOfFace, faces.ofCycle(map.cycle(2 * e + 1)), rightClass.get(e));
      }
    }
    SortedMap<Integer, List<Polygon>> byClass = new TreeMap<>();
    for (int face = 0; face < faces.count(); face++) {
      if (classOfFace[face] != FaceClasses.OUTSIDE) {
        byClass
            .computeIfAbsent(classOfFace[face], c -> new ArrayList<>())
            .add(
                faces.polygon(
                    face,
                    contours.factory(),
                    contours.frame().originX(),
                    contours.frame().originY()));
      }
    }
    List<Band> bands = new ArrayList<>();
    byClass.forEach((index, polygons) -> bands.add(new Band(index, geometry(polygons))));
    return bands;
  }

  private static void setClass(int[] classOfFace, int face, int index) {
    if (face != Faces.UNBOUNDED) {
      classOfFace[face] = index;
    }
  }

  private Geometry geometry(List<Polygon> polygons) {
    return polygons.size() == 1
        ? polygons.get(0)
        : contours.factory().createMultiPolygon(polygons.toArray(Polygon[]::new));
  }

  /**
   * Band of a face in local coordinates, by the value at a point inside it. A point where the value
   * is that of a limit may lie on a ridge without width: then others are asked.
   */
  private int classOf(Face face) {
    double value = Double.NaN;
    for (int k = 0; k < MOST_POINTS; k++) {
      Coordinate point = points.find(face, k);
      if (point != null) {
        Coordinate place = contours.frame().toMap(point.x, point.y);
        value = contours.surface().value(place.x, place.y);
        if (!atLimit(value)) {
          break;
        }
      }
    }
    return index(value);
  }

  private boolean atLimit(double value) {
    for (Level level : levels) {
      if (level.isAt(value)) {
        return true;
      }
    }
    return false;
  }

  private int index(double value) {
    if (Double.isNaN(value)) {
      return Band.NO_VALUE;
    }
    int index = 0;
    while (index < levels.length && levels[index].isAbove(value)) {
      index++;
    }
    return index;
  }
}
