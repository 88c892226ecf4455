package org.mottle.engine.terrain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.check.Check;

/**
 * The hollows of filled ground: cells filled by at least {@code leastDepthM}, joined over sides and
 * corners (neighbours that are filled spill at one level), of {@code leastAreaM2} or more. Volume
 * and area count these cells only: the shallower rim is within the noise.
 *
 * <p>O(n) and the outlines.
 */
public final class Depressions {
  private static final double LEAST_DEPTH_M = 0.010;
  private static final double LEAST_AREA_M2 = 1;

  private Depressions() {}

  /** At least 10 mm deep and twice the noise of the heights, and 1 m². */
  public static List<Depression> of(PriorityFlood flood, double noiseSdM, GeometryFactory factory) {
    return of(flood, leastDepthM(noiseSdM), LEAST_AREA_M2, factory);
  }

  /** max(10 mm, 2 SD): what noise alone digs is not told from a shallower hollow. */
  public static double leastDepthM(double noiseSdM) {
    Check.atLeast("noiseSdM", noiseSdM, 0, "m");
    return Math.max(LEAST_DEPTH_M, 2 * noiseSdM);
  }

  /**
   * The largest volume first.
   *
   * @param flood filled ground
   * @param leastDepthM depth from which a cell belongs to a hollow, 0.001 mm or more, m
   * @param leastAreaM2 area from which a hollow is told, m²
   * @param factory makes the outlines
   */
  public static List<Depression> of(
      PriorityFlood flood, double leastDepthM, double leastAreaM2, GeometryFactory factory) {
    Check.atLeast("leastDepthM", leastDepthM, 1e-6, "m");
    Check.atLeast("leastAreaM2", leastAreaM2, 0, "m²");
    ElevationModel model = flood.model();
    double cellM2 = model.grid().cell() * model.grid().cell();
    boolean[] taken = new boolean[model.grid().size()];
    CellStack cells = new CellStack();
    List<Depression> found = new ArrayList<>();
    for (int i = 0; i < taken.length; i++) {
      if (!taken[i] && flood.holds(i, leastDepthM)) {
        gather(flood, i, leastDepthM, taken, cells);
        // areas are whole numbers of cells: 1 m² of 0.1 m cells must not fail by rounding
        if (cells.size() * cellM2 >= leastAreaM2 * (1 - 1e-9)) {
          found.add(depression(flood, cells, factory));
        }
      }
    }
    found.sort(
        Comparator.comparingDouble(Depression::volumeLitres)
            .reversed()
            .thenComparingInt(Depression::deepestCell));
    return List.copyOf(found);
  }

  private static void gather(
      PriorityFlood flood, int start, double leastDepthM, boolean[] taken, CellStack cells) {
    int columns = flood.model().grid().columns();
    cells.clear();
    cells.add(start);
    taken[start] = true;
    for (int i = 0; i < cells.size(); i++) {
      int cell = cells.get(i);
      for (int k = 0; k < 8; k++) {
        int next = flood.model().neighbour(cell / columns, cell % columns, k);
        if (next >= 0 && !taken[next] && flood.holds(next, leastDepthM)) {
          taken[next] = true;
          cells.add(next);
        }
      }
    }
  }

  private static Depression depression(
      PriorityFlood flood, CellStack cells, GeometryFactory factory) {
    double cellM2 = flood.model().grid().cell() * flood.model().grid().cell();
    double sum = 0;
    int deepest = cells.get(0);
    for (int i = 0; i < cells.size(); i++) {
      double depth = flood.depth(cells.get(i));
      sum += depth;
      if (depth > flood.depth(deepest)) {
        deepest = cells.get(i);
      }
    }
    Geometry outline = CellOutline.of(flood.model().grid(), cells, factory);
    return new Depression(
        outline,
        flood.filled(deepest),
        flood.depth(deepest),
        cells.size() * cellM2,
        sum * cellM2 * 1000,
        deepest);
  }
}
