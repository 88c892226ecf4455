package org.mottle.engine.simulation;

import java.util.List;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.observation.Observations;

/** The lattice of a field: the grid of the surface, grown to hold the true places of readings. */
final class ReadingLattice {
  /** Standard deviations of the position, each way, that the lattice holds. */
  private static final double SPREAD = 3;

  private ReadingLattice() {}

  static CellGrid of(CellGrid surface, List<Draw> draws) {
    double left = 1;
    double right = surface.columns() - 3;
    double top = 1;
    double bottom = surface.rows() - 3;
    for (Draw draw : draws) {
      Observations o = draw.observations();
      for (int i = 0; i < o.size(); i++) {
        double sd = Math.hypot(o.positionError().jitterSdM(i), o.positionError().shiftSdM());
        double spread = SPREAD * sd / surface.cell();
        double u = (o.x(i) - surface.west()) / surface.cell() - 0.5;
        double v = (surface.north() - o.y(i)) / surface.cell() - 0.5;
        left = Math.min(left, u - spread);
        right = Math.max(right, u + spread);
        top = Math.min(top, v - spread);
        bottom = Math.max(bottom, v + spread);
      }
    }
    return grown(surface, nodes(1 - left), nodes(right + 3), nodes(1 - top), nodes(bottom + 3));
  }

  private static int nodes(double wanted) {
    return (int) Math.min(1 << 24, Math.floor(wanted + 1 - 1e-9));
  }

  private static CellGrid grown(CellGrid surface, int west, int east, int north, int south) {
    int columns = Math.max(surface.columns(), east) + west;
    int rows = Math.max(surface.rows(), south) + north;
    return new CellGrid(
        surface.west() - west * surface.cell(),
        surface.north() + north * surface.cell(),
        surface.cell(),
        Math.max(NodeStencil.SIDE, columns),
        Math.max(NodeStencil.SIDE, rows));
  }
}
