package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.EdgeNoding.Edge;
import org.mottle.engine.contour.Faces.Face;

/**
 * Tiles an outline by the values of several surfaces on one grid. Outline and level lines become
 * one arrangement of edges; its faces are classed by the values inside them and joined by class: so
 * the tiles are valid, leave no gap, never overlap, and neighbours share their edge vertex for
 * vertex. Tilings by different rules are cut from the same arrangement, so what is part of what by
 * the rules is so on the map, exactly.
 *
 * <p>The surfaces are {@link LinearSurface}. Ground without value in one of them is the tile {@link
 * Band#NO_VALUE}. Lines between faces of one class are not drawn; limits beyond the data draw
 * nothing.
 *
 * <p>Edges inside the outline lie within a fiftieth of a cell and 2 mm of the level line of the
 * surface, their vertices on a lattice of 2^-10 m; the outline's own vertices move by less than 0.1
 * micrometre. Lines of several surfaces are cut where they meet by snap rounding on that lattice,
 * which lines that nearly coincide, or coincide, cannot break. A part of a tile that is thinner
 * than about 1 mm goes to its neighbour.
 *
 * <p>Cost: the cells of the outline and, where lines meet, n log n in their n segments. One thread
 * at a time.
 */
public final class Tiling {
  private static final int MOST_POINTS = 8;

  private final FacePoint points = new FacePoint();
  private final Contours contours;
  private final List<Level[]> levels;
  private final List<Edge> edges;
  private final PlanarMap map;
  private final FaceClasses faces;

  Tiling(Contours contours, List<Level[]> levels) {
    this.contours = contours;
    this.levels = levels;
    ContourLines lines = new ContourLines(contours);
    List<Chain> cuts = lines.cuts(levels);
    this.edges = EdgeNoding.edges(lines.rings(), cuts);
    this.map = new PlanarMap(edges);
    this.faces = new FaceClasses(map, edges, this::codeOf, contours.frame().grain());
  }

  /**
   * @param outline valid polygon or multipolygon, holes allowed, m
   * @param layers on one grid, at least one
   */
  public static Tiling of(Geometry outline, List<Layer> layers) {
    Contours contours = Contours.of(outline, layers.stream().map(Layer::raster).toList());
    return new Tiling(contours, layers.stream().map(Layer::levels).toList());
  }

  /**
   * The tiles by a rule.
   *
   * @param rule class, 0 or above, of ground by how many limits of each layer it has passed
   * @param leastPartM2 a connected part of a class smaller than this goes to the neighbour with
   *     which it shares most of its edge, the smallest first; ground without value neither goes nor
   *     takes; 0 keeps every part
   * @return the tiles that exist, by ascending class
   */
  public List<Band> by(ToIntFunction<int[]> rule, double leastPartM2) {
    int[] classes = new int[faces.count()];
    for (int f = 0; f < classes.length; f++) {
      int code = faces.code(f);
      classes[f] = code < 0 ? code : rule.applyAsInt(passed(code));
    }
    if (leastPartM2 > 0) {
      new SmallParts(map, faces, classes).merge(leastPartM2);
    }
    List<Edge> kept = new ArrayList<>();
    List<Integer> leftClass = new ArrayList<>();
    List<Integer> rightClass = new ArrayList<>();
    for (int e = 0; e < edges.size(); e++) {
      if (map.has(e)) {
        int left = left(classes, 2 * e);
        int right = left(classes, 2 * e + 1);
        if (left != right) {
          kept.add(edges.get(e));
          leftClass.add(left);
          rightClass.add(right);
        }
      }
    }
    return joined(new PlanarMap(kept), leftClass, rightClass);
  }

  private int left(int[] classes, int half) {
    int face = faces.face(half);
    return face == Faces.UNBOUNDED ? FaceClasses.OUTSIDE : classes[face];
  }

  private List<Band> joined(PlanarMap kept, List<Integer> leftClass, List<Integer> rightClass) {
    Faces tiles = new Faces(kept);
    int[] classOfTile = new int[tiles.count()];
    Arrays.fill(classOfTile, FaceClasses.OUTSIDE);
    for (int e = 0; e < kept.edgeCount(); e++) {
      if (kept.has(e)) {
        setClass(classOfTile, tiles.ofCycle(kept.cycle(2 * e)), leftClass.get(e));
        setClass(classOfTile, tiles.ofCycle(kept.cycle(2 * e + 1)), rightClass.get(e));
      }
    }
    SortedMap<Integer, List<Polygon>> byClass = new TreeMap<>();
    for (int tile = 0; tile < tiles.count(); tile++) {
      if (classOfTile[tile] != FaceClasses.OUTSIDE) {
        byClass
            .computeIfAbsent(classOfTile[tile], c -> new ArrayList<>())
            .add(polygon(tiles, tile));
      }
    }
    List<Band> bands = new ArrayList<>();
    byClass.forEach((index, polygons) -> bands.add(new Band(index, geometry(polygons))));
    return bands;
  }

  private static void setClass(int[] classOfTile, int tile, int index) {
    if (tile != Faces.UNBOUNDED) {
      classOfTile[tile] = index;
    }
  }

  private Polygon polygon(Faces tiles, int tile) {
    Frame frame = contours.frame();
    return tiles.polygon(tile, contours.factory(), frame.originX(), frame.originY());
  }

  private Geometry geometry(List<Polygon> polygons) {
    return polygons.size() == 1
        ? polygons.get(0)
        : contours.factory().createMultiPolygon(polygons.toArray(Polygon[]::new));
  }

  /**
   * How many limits of each layer a face has passed, in one number, by the values at a point inside
   * it. A point where a value is that of a limit may lie on a ridge without width: then others are
   * asked.
   */
  private int codeOf(Face face) {
    double[] values = new double[levels.size()];
    Arrays.fill(values, Double.NaN);
    for (int k = 0; k < MOST_POINTS; k++) {
      Coordinate point = points.find(face, k);
      if (point != null) {
        Coordinate place = contours.frame().toMap(point.x, point.y);
        for (int i = 0; i < values.length; i++) {
          values[i] = contours.masks().get(i).surface().value(place.x, place.y);
        }
        if (!atLimit(values)) {
          break;
        }
      }
    }
    return code(values);
  }

  private boolean atLimit(double[] values) {
    for (int i = 0; i < values.length; i++) {
      for (Level level : levels.get(i)) {
        if (level.isAt(values[i])) {
          return true;
        }
      }
    }
    return false;
  }

  private int code(double[] values) {
    int code = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        return Band.NO_VALUE;
      }
      code = code * (levels.get(i).length + 1) + Level.passed(levels.get(i), values[i]);
    }
    return code;
  }

  private int[] passed(int code) {
    int[] passed = new int[levels.size()];
    int rest = code;
    for (int i = passed.length - 1; i >= 0; i--) {
      passed[i] = rest % (levels.get(i).length + 1);
      rest /= levels.get(i).length + 1;
    }
    return passed;
  }
}
