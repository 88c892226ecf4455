package org.mottle.engine.contour;

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
  private final LinearSurface surface;
  private final Frame frame;
  private final QuadMask mask;
  private final OutlineIndex outline;
  private final GeometryFactory factory;

  private Contours(Geometry outline, Raster raster) {
    this.surface = new LinearSurface(raster);
    this.frame = Frame.of(outline.getEnvelopeInternal(), raster.grid().cell());
    this.mask = new QuadMask(outline, surface);
    this.outline = new OutlineIndex(outline, frame);
    this.factory = outline.getFactory();
  }

  /**
   * @param outline valid polygon or multipolygon, holes allowed, m
   * @param raster values at cell centres; {@link org.mottle.engine.grid.GreenCells#surface} has
   *     those that every point of the outline needs
   */
  public static Contours of(Geometry outline, Raster raster) {
    if (!(outline instanceof Polygonal) || outline.isEmpty()) {
      throw new IllegalArgumentException(
          "an outline must be a non-empty polygon, was " + outline.getGeometryType());
    }
    return new Contours(outline, raster);
  }

  /** The bands between ascending limits; those that exist, by ascending index. */
  public List<Band> bands(double... limits) {
    return new Bands(this, Level.ofLimits(limits)).tile();
  }

  /**
   * Iso lines at whole multiples of a step.
   *
   * @param step between levels, above 0
   * @param limits of the bands drawn beside the lines; may be none
   */
  public List<IsoLine> isoLines(double step, double... limits) {
    return IsoLines.at(this, IsoLines.multiples(surface, step), limits);
  }

  /** The continuous surface that is cut. */
  public LinearSurface surface() {
    return surface;
  }

  Frame frame() {
    return frame;
  }

  QuadMask mask() {
    return mask;
  }

  OutlineIndex outline() {
    return outline;
  }

  GeometryFactory factory() {
    return factory;
  }
}
