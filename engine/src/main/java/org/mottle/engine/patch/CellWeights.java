package org.mottle.engine.patch;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;

/**
 * How much of every cell at which the surface is wanted belongs to a piece of ground, laid out to
 * count the area of {@link Excursions}: cells covered whole are counted by words of 64, the others
 * one by one. Immutable.
 */
public final class CellWeights {
  private final long[] whole;
  private final double cellM2;
  private final int[] partial;
  private final double[] partialM2;

  /**
   * @param cells ascending, or in any order
   * @param areaM2 covered area of each
   * @param cellM2 area of a cell
   * @param all number of cells at which the surface is wanted
   */
  CellWeights(int[] cells, double[] areaM2, double cellM2, int all) {
    this.whole = new long[(all + 63) >> 6];
    this.cellM2 = cellM2;
    int[] some = new int[cells.length];
    double[] someM2 = new double[cells.length];
    int n = 0;
    for (int i = 0; i < cells.length; i++) {
      if (areaM2[i] == cellM2) {
        whole[cells[i] >> 6] |= 1L << cells[i];
      } else {
        some[n] = cells[i];
        someM2[n++] = areaM2[i];
      }
    }
    this.partial = Arrays.copyOf(some, n);
    this.partialM2 = Arrays.copyOf(someM2, n);
  }

  /**
   * @param cells of the green
   * @param area polygon or multipolygon within the green, m
   */
  public static CellWeights of(GreenCells cells, Geometry area) {
    CoveredGround ground = CoveredGround.of(cells, area);
    int[] covered = new int[ground.size()];
    double[] areaM2 = new double[covered.length];
    Arrays.setAll(covered, ground::place);
    Arrays.setAll(areaM2, ground::areaM2);
    double cell = cells.surfaceGrid().cell();
    return new CellWeights(covered, areaM2, cell * cell, cells.neededCount());
  }

  /** Area of the cells whose bit is set, m². */
  double area(long[] words) {
    int count = 0;
    for (int w = 0; w < whole.length; w++) {
      count += Long.bitCount(whole[w] & words[w]);
    }
    double area = count * cellM2;
    for (int i = 0; i < partial.length; i++) {
      area += (words[partial[i] >> 6] >>> partial[i] & 1) * partialM2[i];
    }
    return area;
  }

  /** Area of the cells whose bit is set in neither, m². */
  double areaOfNeither(long[] one, long[] other) {
    long[] neither = new long[whole.length];
    for (int w = 0; w < neither.length; w++) {
      neither[w] = ~(one[w] | other[w]);
    }
    return area(neither);
  }
}
