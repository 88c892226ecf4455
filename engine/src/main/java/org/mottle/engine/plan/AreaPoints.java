package org.mottle.engine.plan;

import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.CellGrid;

/**
 * Points that stand for a piece of ground: the cells of a lattice over the outline, each at the
 * centroid of its covered part (the centre of a cell inside) and with the area of that part, so
 * that the areas sum to the outline's. North first, west to east. Immutable.
 */
public final class AreaPoints {
  private final Positions positions;
  private final double[] areaM2;

  private AreaPoints(Positions positions, double[] areaM2) {
    this.positions = positions;
    this.areaM2 = areaM2;
  }

  /**
   * @param outline polygon or multipolygon, holes allowed, m
   * @param spacing side of a cell, m
   */
  public static AreaPoints of(Geometry outline, double spacing) {
    CellCoverage cells =
        CellCoverage.of(outline, CellGrid.covering(outline.getEnvelopeInternal(), spacing));
    double[] x = new double[cells.size()];
    double[] y = new double[x.length];
    double[] area = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = cells.x(i);
      y[i] = cells.y(i);
      area[i] = cells.areaM2(i);
    }
    return new AreaPoints(Positions.of(x, y), area);
  }

  public Positions positions() {
    return positions;
  }

  public int size() {
    return areaM2.length;
  }

  /** Area that point {@code i} stands for, m². */
  public double areaM2(int i) {
    return areaM2[i];
  }

  /** Sum of the areas, m². */
  public double areaM2() {
    double sum = 0;
    for (double part : areaM2) {
      sum += part;
    }
    return sum;
  }
}
