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
    for (Chain traced : new LevelTracer(contours.mask(), level, frame).trace()) {
      addInside(traced, inside);
    }
    return inside;
  }

  /**
   * The edge between ground with values and ground without, with a vertex wherever a level line
   * traced so far ends on it, so that both are fitted to the outline alike.
   */
  List<Chain> seams() {
    List<Chain> inside = new ArrayList<>();
    for (Chain seam : contours.mask().seams(frame)) {
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

  private void addInside(Chain line, List<Chain> inside) {
    Chain thinned = ChainThinning.thin(line, frame.grain(), frame.thinning());
    if (thinned == null || thinned.closed() && thinned.isSliver(frame.grain())) {
      return;
    }
    if (!thinned.closed()) {
      int last = thinned.size() - 1;
      openEnds.add(new Coordinate(thinned.x()[0], thinned.y()[0]));
      openEnds.add(new Coordinate(thinned.x()[last], thinned.y()[last]));
    }
    clipper.clip(thinned, inside);
  }
}
