package org.mottle.engine.grid;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;

/**
 * How much of every cell at which a surface is wanted ({@link GreenCells#neededCell}) belongs to a
 * piece of ground: what sums and means over that ground weigh the cells by. Cells of which nothing
 * belongs to it are left out. Immutable.
 */
public final class CoveredGround {
  private final int[] place;
  private final double[] areaM2;
  private final double totalM2;

  private CoveredGround(int[] place, double[] areaM2) {
    this.place = place;
    this.areaM2 = areaM2;
    double sum = 0;
    for (double a : areaM2) {
      sum += a;
    }
    this.totalM2 = sum;
  }

  /**
   * @param cells of the green
   * @param area polygon or multipolygon within the green, m
   */
  public static CoveredGround of(GreenCells cells, Geometry area) {
    int[] places = places(cells);
    CellCoverage coverage = CellCoverage.of(area, cells.surfaceGrid());
    int[] place = new int[coverage.size()];
    double[] areaM2 = new double[place.length];
    int n = 0;
    for (int i = 0; i < place.length; i++) {
      // an edge on the outline may reach a neighbour cell by rounding alone
      if (places[coverage.cell(i)] >= 0) {
        place[n] = places[coverage.cell(i)];
        areaM2[n++] = coverage.areaM2(i);
      }
    }
    return new CoveredGround(Arrays.copyOf(place, n), Arrays.copyOf(areaM2, n));
  }

  /** Place among the cells at which the surface is wanted, by index on the surface grid, or -1. */
  public static int[] places(GreenCells cells) {
    int[] places = new int[cells.surfaceGrid().size()];
    Arrays.fill(places, -1);
    for (int i = 0; i < cells.neededCount(); i++) {
      places[cells.neededCell(i)] = i;
    }
    return places;
  }

  /** Number of cells of which some part belongs to the ground. */
  public int size() {
    return place.length;
  }

  /** Place of the i-th cell among those at which the surface is wanted. */
  public int place(int i) {
    return place[i];
  }

  /** Covered area of the i-th cell, m². */
  public double areaM2(int i) {
    return areaM2[i];
  }

  /** m². */
  public double areaM2() {
    return totalM2;
  }
}
