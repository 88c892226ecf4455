package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.OrientedCoordinateArray;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;

/**
 * Outline and lines as edges that meet only at their ends, each edge once, by snap rounding to the
 * lattice (Hobby 1999; Goodrich, Guibas, Hershberger and Tanenbaum 1997).
 */
final class EdgeNoding {
  private static final Object OUTLINE = new Object();
  private static final Object LINE = new Object();

  private EdgeNoding() {}

  /**
   * @param points of the edge, at least two
   * @param ground +1 where only the left of the edge is inside the outline, -1 where only its right
   *     is, 0 where both are
   */
  record Edge(Coordinate[] points, int ground) {}

  /**
   * As a rule the lines end on vertices of the outline and meet nothing else; then cutting at those
   * vertices is all there is to do, and snap rounding is spared.
   */
  static List<Edge> edges(List<Coordinate[]> rings, List<Chain> lines) {
    List<Coordinate[]> paths = new ArrayList<>(rings);
    Set<Coordinate> ends = new HashSet<>();
    for (Chain line : lines) {
      Coordinate[] path = coordinates(line);
      paths.add(path);
      if (!line.closed()) {
        ends.add(path[0]);
        ends.add(path[path.length - 1]);
      }
    }
    List<Edge> cut = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      cut(paths.get(i), ends, i < rings.size() ? 1 : 0, cut);
    }
    return new EdgeCheck(cut).meetOnlyAtEnds() ? cut : snapRounded(paths, rings.size(), Frame.UNIT);
  }

  /**
   * Lines cut wherever they meet, each piece once; the lines as they are when they meet nowhere.
   *
   * @param step of the lattice on which they are cut, m
   */
  static List<Chain> cutWhereTheyMeet(List<Chain> lines, double step) {
    List<Coordinate[]> paths = new ArrayList<>();
    List<Edge> whole = new ArrayList<>();
    for (Chain line : lines) {
      paths.add(coordinates(line));
      whole.add(new Edge(paths.get(paths.size() - 1), 0));
    }
    if (new EdgeCheck(whole).meetOnlyAtEnds()) {
      return lines;
    }
    List<Chain> pieces = new ArrayList<>();
    for (Edge edge : snapRounded(paths, 0, step)) {
      pieces.add(chain(edge.points()));
    }
    return pieces;
  }

  private static Chain chain(Coordinate[] points) {
    boolean closed = points[0].equals2D(points[points.length - 1]);
    Chain.Builder chain = new Chain.Builder();
    for (int i = 0; i < points.length - (closed ? 1 : 0); i++) {
      chain.add(points[i].x, points[i].y);
    }
    return chain.build(closed);
  }

  private static void cut(Coordinate[] path, Set<Coordinate> at, int ground, List<Edge> edges) {
    int from = 0;
    for (int i = 1; i < path.length; i++) {
      if (i == path.length - 1 || at.contains(path[i])) {
        edges.add(new Edge(Arrays.copyOfRange(path, from, i + 1), ground));
        from = i;
      }
    }
  }

  private static List<Edge> snapRounded(List<Coordinate[]> paths, int ringCount, double step) {
    List<NodedSegmentString> strings = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      strings.add(new NodedSegmentString(paths.get(i), i < ringCount ? OUTLINE : LINE));
    }
    SnapRoundingNoder noder = new SnapRoundingNoder(new PrecisionModel(1 / step));
    noder.computeNodes(strings);
    return merged(noder.getNodedSubstrings());
  }

  private static Coordinate[] coordinates(Chain line) {
    int n = line.size();
    Coordinate[] points = new Coordinate[line.closed() ? n + 1 : n];
    for (int i = 0; i < n; i++) {
      points[i] = new Coordinate(line.x()[i], line.y()[i]);
    }
    if (line.closed()) {
      points[n] = points[0].copy();
    }
    return points;
  }

  /** Edges that coincide become one; sides of the outline that close up on each other vanish. */
  private static List<Edge> merged(Collection<?> noded) {
    Map<OrientedCoordinateArray, Integer> known = new TreeMap<>();
    List<Coordinate[]> points = new ArrayList<>();
    List<int[]> sides = new ArrayList<>();
    for (Object item : noded) {
      SegmentString string = (SegmentString) item;
      Coordinate[] path = string.getCoordinates();
      if (path.length == 2 && path[0].equals2D(path[1])) {
        continue;
      }
      Integer at = known.putIfAbsent(new OrientedCoordinateArray(path), points.size());
      if (at == null) {
        at = points.size();
        points.add(path);
        sides.add(new int[2]);
      }
      if (string.getData() == OUTLINE) {
        sides.get(at)[0] += sameWay(path, points.get(at)) ? 1 : -1;
        sides.get(at)[1]++;
      }
    }
    List<Edge> edges = new ArrayList<>(points.size());
    for (int i = 0; i < points.size(); i++) {
      boolean closedUp = sides.get(i)[1] > 0 && sides.get(i)[0] == 0;
      if (!closedUp) {
        edges.add(new Edge(points.get(i), Integer.signum(sides.get(i)[0])));
      }
    }
    return edges;
  }

  private static boolean sameWay(Coordinate[] path, Coordinate[] other) {
    int last = path.length - 1;
    if (!path[0].equals2D(path[last])) {
      return path[0].equals2D(other[0]);
    }
    return path[0].equals2D(other[0]) && path[1].equals2D(other[1]);
  }
}
