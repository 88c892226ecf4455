package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

/**
 * The moisture over a green.
 *
 * @param cells the cells of the green
 * @param interpolable local mean at the centres and one ring round them, on {@code
 *     cells.surfaceGrid()}, % by volume
 * @param mean the same in the cells whose centre is inside, on {@code cells.grid()}, % by volume
 * @param sd standard deviation of its error there, % by volume; NaN where the method has none
 * @param medianSd median of {@code sd} over the green, % by volume; NaN where the method has none
 * @param conditionEstimate of the kriging system; 1 for inverse distance
 * @param chances of being below and above the band; empty without a band or a standard deviation
 */
public record Surface(
    GreenCells cells,
    Raster interpolable,
    Raster mean,
    Raster sd,
    double medianSd,
    double conditionEstimate,
    Optional<Chances> chances) {

  /**
   * Probabilities in the cells whose centre is inside.
   *
   * @param dry of being below the band
   * @param wet of being above it
   * @param low of belonging to a second, drier population; empty where there is none
   * @param classes number of the class of each centre, by the rule that made the zones; a zone may
   *     differ where its part was too small to stand alone
   */
  public record Chances(Raster dry, Raster wet, Optional<Raster> low, Raster classes) {}

  /**
   * @param mean one value for each needed centre of the cells
   * @param sd likewise
   */
  static Surface of(GreenCells cells, double[] mean, double[] sd, double conditionEstimate) {
    Raster meanMap = cells.map(mean);
    Raster sdMap = cells.map(sd);
    return new Surface(
        cells,
        cells.surface(mean),
        meanMap,
        sdMap,
        median(sdMap),
        conditionEstimate,
        Optional.empty());
  }

  Surface with(Chances found) {
    return new Surface(
        cells, interpolable, mean, sd, medianSd, conditionEstimate, Optional.of(found));
  }

  private static double median(Raster raster) {
    double[] present = Arrays.stream(raster.values()).filter(v -> !Double.isNaN(v)).toArray();
    return present.length == 0 ? Double.NaN : new Median().evaluate(present);
  }
}
