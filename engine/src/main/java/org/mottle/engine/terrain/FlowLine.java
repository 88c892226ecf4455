package org.mottle.engine.terrain;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.CellGrid;

/**
 * The way surface water takes from a place, from cell centre to cell centre down {@link
 * FlowDirection}. A line that starts in a hollow leads over its spill and ends there; one that
 * meets a hollow ends where it enters it; any other ends where the model does.
 *
 * @param line centres of the cells passed, two at least, m
 * @param dropM height lost from first to last, m; below 0 when it starts in a hollow and climbs to
 *     the spill
 * @param end why it ends
 */
public record FlowLine(LineString line, double dropM, End end) {

  /** Why a flow line ends. */
  public enum End {
    /** It reached the edge of the model or a void. */
    EDGE,
    /** It reached ground that fills before water runs on. */
    HOLLOW,
    /** It started in a hollow and left it here. */
    SPILL
  }

  /**
   * @param flow directions
   * @param x of the place, m
   * @param y of the place, m
   * @param hollowDepthM depth of filling from which ground counts as a hollow, 0.001 mm or more, m
   * @param factory makes the line
   * @throws IllegalArgumentException when the place has no height
   */
  public static FlowLine from(
      FlowDirection flow, double x, double y, double hollowDepthM, GeometryFactory factory) {
    Check.atLeast("hollowDepthM", hollowDepthM, 1e-6, "m");
    PriorityFlood flood = flow.flood();
    ElevationModel model = flood.model();
    int start = model.cellAt(x, y);
    if (start < 0 || !model.has(start)) {
      throw new IllegalArgumentException(
          "a flow line must start where the ground has a height; %s, %s has none".formatted(x, y));
    }
    boolean fromHollow = flood.holds(start, hollowDepthM);
    List<Coordinate> points = new ArrayList<>();
    int cell = start;
    End end = null;
    while (end == null) {
      points.add(centre(model.grid(), cell));
      boolean hollow = flood.holds(cell, hollowDepthM);
      int next = flow.receiver(cell);
      if (fromHollow && !leads(flood, cell, start)) {
        end = End.SPILL;
      } else if (!fromHollow && hollow) {
        end = End.HOLLOW;
      } else if (next < 0) {
        end = End.EDGE;
      } else {
        cell = next;
      }
    }
    if (points.size() == 1) {
      points.add(new Coordinate(points.get(0)));
    }
    return new FlowLine(
        factory.createLineString(points.toArray(new Coordinate[0])),
        model.height(start) - model.height(cell),
        end);
  }

  /** Whether a cell on the way out of a hollow still lies at its level, under water or not. */
  private static boolean leads(PriorityFlood flood, int cell, int start) {
    return flood.filled(cell) == flood.filled(start) && flood.depth(cell) > 0;
  }

  private static Coordinate centre(CellGrid grid, int cell) {
    return new Coordinate(grid.x(cell % grid.columns()), grid.y(cell / grid.columns()));
  }
}
