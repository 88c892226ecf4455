package org.mottle.engine.season;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.Surface;

/**
 * Counts over the maps, cell by cell. Cells that the same surveys call the same share one interval,
 * so the quantiles are found once each.
 *
 * @param count surveys that saw the cell; NaN outside the green
 * @param share weighted
 * @param low lower end of its interval
 * @param high upper end
 * @param chance that it is so in more than half of surveys
 */
record ShareCount(Raster count, Raster share, Raster low, Raster high, Raster chance) {
  /** A place is called wet, or dry, where that is more likely than not. */
  private static final double CALLED = 0.5;

  private record Figures(Interval share, double chance) {
    static Figures of(SurveyShare share) {
      return new Figures(share.interval(), share.chanceOfMoreThanHalf());
    }
  }

  static ShareCount of(
      ComparableMaps chosen, GradeWeights weights, Function<Surface.Chances, Raster> which) {
    CellGrid grid = chosen.maps().get(0).map().surface().cells().grid();
    int n = grid.size();
    double[] held = new double[n];
    double[] weight = new double[n];
    double[] count = new double[n];
    for (SurveyedMap m : chosen.maps()) {
      double w = weights.of(m.grade());
      Raster chance = which.apply(m.map().surface().chances().orElseThrow());
      for (int i = 0; i < n; i++) {
        if (chance.has(i)) {
          count[i]++;
          weight[i] += w;
          held[i] += chance.value(i) > CALLED ? w : 0;
        }
      }
    }
    double[][] out = new double[5][n];
    for (double[] o : out) {
      Arrays.fill(o, Double.NaN);
    }
    Map<SurveyShare, Figures> found = new HashMap<>();
    for (int i = 0; i < n; i++) {
      if (weight[i] > 0) {
        Figures f = found.computeIfAbsent(new SurveyShare(held[i], weight[i]), Figures::of);
        out[0][i] = count[i];
        out[1][i] = f.share.best();
        out[2][i] = f.share.low();
        out[3][i] = f.share.high();
        out[4][i] = f.chance;
      }
    }
    return new ShareCount(
        new Raster(grid, out[0]),
        new Raster(grid, out[1]),
        new Raster(grid, out[2]),
        new Raster(grid, out[3]),
        new Raster(grid, out[4]));
  }
}
