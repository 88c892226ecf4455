package org.mottle.engine.terrain;

import java.util.Locale;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.CellGrid;

/**
 * How far the heights reach beyond an outline. Water comes from ground above: a model cut at the
 * collar hides what runs onto the green, so that contributing areas come out too small.
 *
 * @param reachM least distance from the outline to where heights end (the edge of the model or the
 *     centre of a void), m; 0 when they end on it or within it
 * @param wantedM distance wanted, m
 * @param voidsWithin cells without height whose centre lies inside the outline
 * @param voidsAround cells without height outside it, within the distance wanted
 */
public record Surrounds(double reachM, double wantedM, long voidsWithin, long voidsAround) {
  /** Distance wanted where none is given, m. */
  public static final double WANTED_M = 30;

  public static Surrounds of(ElevationModel model, Geometry outline) {
    return of(model, outline, WANTED_M);
  }

  /**
   * @param model heights
   * @param outline polygon or multipolygon, m
   * @param wantedM distance wanted, m
   */
  public static Surrounds of(ElevationModel model, Geometry outline, double wantedM) {
    Check.atLeast("wantedM", wantedM, 0, "m");
    if (!(outline instanceof Polygonal) || outline.isEmpty()) {
      throw new IllegalArgumentException(
          "an outline must be a non-empty polygon, was " + outline.getGeometryType());
    }
    CellGrid grid = model.grid();
    Envelope box = outline.getEnvelopeInternal();
    double reach =
        Math.min(
            Math.min(box.getMinX() - grid.west(), grid.east() - box.getMaxX()),
            Math.min(box.getMinY() - grid.south(), grid.north() - box.getMaxY()));
    long within = 0;
    long around = 0;
    if (model.voids() > 0) {
      IndexedFacetDistance distance = new IndexedFacetDistance(outline.getBoundary());
      IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(outline);
      Coordinate centre = new Coordinate();
      int top = row(grid, box.getMaxY() + wantedM);
      int bottom = row(grid, box.getMinY() - wantedM);
      int left = column(grid, box.getMinX() - wantedM);
      int right = column(grid, box.getMaxX() + wantedM);
      for (int row = top; row <= bottom; row++) {
        for (int column = left; column <= right; column++) {
          if (!model.has(grid.index(row, column))) {
            centre.setX(grid.x(column));
            centre.setY(grid.y(row));
            if (inside.locate(centre) != Location.EXTERIOR) {
              within++;
              reach = Math.min(reach, 0);
            } else {
              double d = distance.distance(outline.getFactory().createPoint(centre));
              around += d <= wantedM ? 1 : 0;
              reach = Math.min(reach, d);
            }
          }
        }
      }
    }
    return new Surrounds(Math.max(0, reach), wantedM, within, around);
  }

  private static int row(CellGrid grid, double y) {
    double row = Math.floor((grid.north() - y) / grid.cell());
    return (int) Math.max(0, Math.min(grid.rows() - 1, row));
  }

  private static int column(CellGrid grid, double x) {
    double column = Math.floor((x - grid.west()) / grid.cell());
    return (int) Math.max(0, Math.min(grid.columns() - 1, column));
  }

  /** Whether the heights reach as far as wanted, without a void. */
  public boolean enough() {
    return reachM >= wantedM;
  }

  /** The finding in words; empty when the heights reach far enough. */
  public String words() {
    if (enough()) {
      return "";
    }
    String voids =
        voidsWithin > 0
            ? "; %d cells inside the outline have no height".formatted(voidsWithin)
            : voidsAround > 0 ? "; %d cells round it have no height".formatted(voidsAround) : "";
    return String.format(
        Locale.ROOT,
        "the elevation reaches %.1f m beyond the outline, %.0f m are wanted%s: water that comes from"
            + " further out is not seen, so contributing areas and wetness indices here may be too"
            + " small; consider an elevation model with more surrounds",
        reachM,
        wantedM,
        voids);
  }
}
