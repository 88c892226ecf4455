package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/** The level lines of one set of contours: what bands and iso lines are both made from. */
final class ContourLines {
  private final Contours contours;
  private final Frame frame;
  private final OutlineClipper clipper;
  private final List<Coordinate> openEnds = new ArrayList<>();

  ContourLines(Contours contours) {
    this.contours = contours;
    this.frame = contours.frame();
    this.clipper = new OutlineClipper(contours.outline(), frame.grain());
  }

  /** The rings of the outline with the points put in where the lines traced so far end. */
  List<Coordinate[]> rings() {
    return contours.outline().rings(clipper.met());
  }

  /** The lines of one level, each ending at the outline, at ground without values, or in itself. */
  List<Chain> at(Level level) {
    List<Chain> inside = new ArrayList<>();
    for (Chain thinned : thinned(contours.masks().get(0), level)) {
      if (!thinned.closed()) {
        int last = thinned.size() - 1;
        openEnds.add(new Coordinate(thinned.x()[0], thinned.y()[0]));
        openEnds.add(new Coordinate(thinned.x()[last], thinned.y()[last]));
      }
      clipper.clip(thinned, inside);
    }
    return inside;
  }

  /**
   * The lines of all levels of one surface, and the seams; or those of several surfaces, which
   * cross: they are cut where they meet, on the lattice of the lines, before they are fitted to the
   * outline, so that no piece is shorter than a grain.
   *
   * @param levels for each surface
   */
  List<Chain> cuts(List<Level[]> levels) {
    List<Chain> inside = new ArrayList<>();
    if (levels.size() == 1) {
      for (Level level : levels.get(0)) {
        inside.addAll(at(level));
      }
      inside.addAll(seams());
      return inside;
    }
    List<Chain> all = new ArrayList<>();
    for (int k = 0; k < levels.size(); k++) {
      for (Level level : levels.get(k)) {
        all.addAll(thinned(contours.masks().get(k), level));
      }
    }
    all.addAll(contours.masks().get(0).seams(frame));
    for (Chain piece : EdgeNoding.cutWhereTheyMeet(all, frame.grain())) {
      clipper.clip(piece, inside);
    }
    return inside;
  }

  /**
   * The edge between ground with values and ground without, with a vertex wherever a level line
   * traced so far ends on it, so that both are fitted to the outline alike.
   */
  private List<Chain> seams() {
    List<Chain> inside = new ArrayList<>();
    for (Chain seam : contours.masks().get(0).seams(frame)) {
      clipper.clip(withEnds(seam), inside);
    }
    return inside;
  }

  private Chain withEnds(Chain seam) {
    double x = seam.x()[0];
    double y = seam.y()[0];
    double endX = seam.x()[1];
    double endY = seam.y()[1];
    List<Coordinate> between = new ArrayList<>();
    for (Coordinate end : openEnds) {
      boolean across = y == endY && end.y == y && end.x > x && end.x < endX;
      boolean along = x == endX && end.x == x && end.y < y && end.y > endY;
      if (across || along) {
        between.add(end);
      }
    }
    between.sort(Comparator.comparingDouble(end -> Math.abs(end.x - x) + Math.abs(end.y - y)));
    Chain.Builder points = new Chain.Builder();
    points.add(x, y);
    for (Coordinate end : between) {
      points.add(end.x, end.y);
    }
    points.add(endX, endY);
    return points.build(false);
  }

  /** The lines of one level, put on the lattice; slivers that close on themselves left out. */
  private List<Chain> thinned(QuadMask mask, Level level) {
    List<Chain> lines = new ArrayList<>();
    for (Chain traced : new LevelTracer(mask, level, frame).trace()) {
      Chain thinned = ChainThinning.thin(traced, frame.grain(), frame.thinning());
      boolean nothing = thinned == null || thinned.closed() && thinned.isSliver(frame.grain());
      if (!nothing) {
        lines.add(thinned);
      }
    }
    return lines;
  }
}
