package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygonal;
import org.mottle.engine.grid.Raster;

/**
 * A surface inside an outline, made ready to be cut by values: bands and iso lines taken from the
 * same contours share the preparation. See {@link Bands} and {@link IsoLines} for what they are.
 *
 * <p>Holds scratch memory for look-ups by place: one thread at a time.
 */
public final class Contours {
  private final List<QuadMask> masks = new ArrayList<>();
  private final Frame frame;
  private final OutlineIndex outline;
  private final GeometryFactory factory;

  private Contours(Geometry outline, List<Raster> rasters) {
    for (LinearSurface surface : LinearSurface.alike(rasters)) {
      masks.add(new QuadMask(outline, surface));
    }
    this.frame = Frame.of(outline.getEnvelopeInternal(), surface().cell());
    this.outline = new OutlineIndex(outline, frame);
    this.factory = outline.getFactory();
  }

  /**
   * @param outline valid polygon or multipolygon, holes allowed, m
   * @param raster values at cell centres; {@link org.mottle.engine.grid.GreenCells#surface} has
   *     those that every point of the outline needs
   */
  public static Contours of(Geometry outline, Raster raster) {
    return of(outline, List.of(raster));
  }

  /** Several surfaces on one grid; a cell that lacks a value in one has none in any. */
  static Contours of(Geometry outline, List<Raster> rasters) {
    if (!(outline instanceof Polygonal) || outline.isEmpty()) {
      throw new IllegalArgumentException(
          "an outline must be a non-empty polygon, was " + outline.getGeometryType());
    }
    return new Contours(outline, rasters);
  }

  /** The bands between ascending limits; those that exist, by ascending index. */
  public List<Band> bands(double... limits) {
    return Bands.tile(this, limits);
  }

  /**
   * Iso lines at whole multiples of a step.
   *
   * @param step between levels, above 0
   * @param limits of the bands drawn beside the lines; may be none
   */
  public List<IsoLine> isoLines(double step, double... limits) {
    return IsoLines.at(this, IsoLines.multiples(surface(), step), limits);
  }

  /** The continuous surface that is cut; the first of several. */
  public LinearSurface surface() {
    return masks.get(0).surface();
  }

  Frame frame() {
    return frame;
  }

  /** The squares to trace of each surface, in their order. */
  List<QuadMask> masks() {
    return masks;
  }

  OutlineIndex outline() {
    return outline;
  }

  GeometryFactory factory() {
    return factory;
  }
}
