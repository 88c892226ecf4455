package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;
import org.mottle.engine.grid.Raster;

/** The level lines of a surface inside an outline: what bands and iso lines are both made from. */
final class ContourLines {
  private final LinearSurface surface;
  private final Frame frame;
  private final QuadMask mask;
  private final OutlineIndex outline;
  private final OutlineClipper clipper;

  ContourLines(Geometry outline, Raster raster) {
    if (!(outline instanceof Polygonal) || outline.isEmpty()) {
      throw new IllegalArgumentException(
          "an outline must be a non-empty polygon, was " + outline.getGeometryType());
    }
    this.surface = new LinearSurface(raster);
    this.frame = Frame.of(outline.getEnvelopeInternal(), raster.grid().cell());
    this.mask = new QuadMask(outline, surface);
    this.outline = new OutlineIndex(outline, frame);
    this.clipper = new OutlineClipper(this.outline, frame.grain());
  }

  LinearSurface surface() {
    return surface;
  }

  Frame frame() {
    return frame;
  }

  /** The rings of the outline with the points put in where the lines traced so far end. */
  List<Coordinate[]> rings() {
    return outline.rings(clipper.met());
  }

  /** The lines of one level, each ending at the outline, at ground without values, or in itself. */
  List<Chain> at(Level level) {
    List<Chain> inside = new ArrayList<>();
    for (Chain traced : new LevelTracer(mask, level, frame).trace()) {
      addInside(traced, inside);
    }
    return inside;
  }

  /** The edge between ground with values and ground without. */
  List<Chain> seams() {
    List<Chain> inside = new ArrayList<>();
    for (Chain seam : mask.seams(frame)) {
      addInside(seam, inside);
    }
    return inside;
  }

  private void addInside(Chain line, List<Chain> inside) {
    Chain thinned = ChainThinning.thin(line, frame.grain());
    if (thinned != null && !(thinned.closed() && thinned.isSliver(frame.grain()))) {
      clipper.clip(thinned, inside);
    }
  }
}
