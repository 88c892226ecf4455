package org.mottle.engine.patch;

import java.util.Arrays;
import org.mottle.engine.contour.Layer;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

/**
 * How likely every place of a green is dry or wet, and the realisations that say what is so at many
 * places at once.
 *
 * @param cells of the green
 * @param dry probability that the ground is below the band, on {@link GreenCells#surfaceGrid()}
 * @param wet probability that it is above
 * @param sd standard deviation of the map, % by volume
 * @param excursions from the same draws; {@link Excursions#none} when there are none
 */
public record Probabilities(
    GreenCells cells, Raster dry, Raster wet, Raster sd, Excursions excursions) {

  public Probabilities {
    if (excursions.cells() != cells.neededCount()) {
      throw new IllegalArgumentException(
          "realisations need the %d cells of the surface, had %d"
              .formatted(cells.neededCount(), excursions.cells()));
    }
  }

  /** From values at the centres at which the surface is wanted. */
  public static Probabilities of(
      GreenCells cells, double[] dry, double[] wet, double[] sd, Excursions excursions) {
    return new Probabilities(
        cells, cells.surface(dry), cells.surface(wet), cells.surface(sd), excursions);
  }

  /** Probability of the plain statement of a class: dry, in band or wet. */
  public Raster of(ZoneClass cls) {
    return switch (cls) {
      case DRY, PROBABLY_DRY -> dry;
      case WET, PROBABLY_WET -> wet;
      case IN_BAND -> band();
      default -> throw new IllegalArgumentException("no probability belongs to " + cls);
    };
  }

  private Raster band() {
    double[] band = dry.values();
    for (int i = 0; i < band.length; i++) {
      band[i] = 1 - band[i] - wet.value(i);
    }
    return new Raster(dry.grid(), band);
  }

  /** Whether the standard deviation is anywhere above a limit. */
  boolean anySdAbove(double limit) {
    return Arrays.stream(sd.values()).anyMatch(v -> v > limit);
  }

  /** The probability of a class, to be cut at limits; ground exactly at a limit has passed it. */
  Layer layer(ZoneClass cls, double... limits) {
    return Layer.atLeast(of(cls), limits);
  }
}
