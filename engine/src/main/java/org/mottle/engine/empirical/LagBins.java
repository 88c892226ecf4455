package org.mottle.engine.empirical;

import java.util.List;
import org.mottle.engine.check.Check;
import org.mottle.engine.observation.Observations;

/**
 * Classes of separation: (0, width], (width, 2 width], ... up to and including the cutoff. A pair
 * exactly on a boundary belongs to the lower class. The last class ends at the cutoff.
 *
 * @param cutoff longest separation that counts, m
 * @param width width of a class, m
 */
public record LagBins(double cutoff, double width) {

  private static final int MOST_BINS = 100_000;

  /** A third as gstat has it, so that the default lags of both hold the same pairs. */
  private static final double THIRD = 0.33333;

  private static final int FIFTEEN = 15;

  public LagBins {
    Check.above("cutoff", cutoff, 0, "m");
    Check.above("width of a lag", width, 0, "m");
    if (cutoff / width > MOST_BINS) {
      throw new IllegalArgumentException(
          "a lag width of "
              + width
              + " m makes more than "
              + MOST_BINS
              + " lags up to the cutoff of "
              + cutoff
              + " m; use a wider lag");
    }
  }

  /** A cutoff of a third of the bounding box's diagonal and fifteen lags. */
  public static LagBins defaultsFor(Observations observations) {
    return defaultsFor(List.of(observations));
  }

  /**
   * The same for groups whose pairs are pooled: the longest diagonal of any group counts. Where no
   * two places differ the cutoff is 1 m, and the variogram will have no lags.
   */
  public static LagBins defaultsFor(List<Observations> groups) {
    double diagonal = longestDiagonal(groups);
    double cutoff = diagonal > 0 ? THIRD * diagonal : 1;
    return new LagBins(cutoff, cutoff / FIFTEEN);
  }

  private static double longestDiagonal(List<Observations> groups) {
    return groups.stream().mapToDouble(LagBins::diagonal).max().orElse(0);
  }

  /** Number of classes, empty ones included. */
  public int count() {
    return indexOf(cutoff) + 1;
  }

  /** Class of a separation in (0, cutoff], from 0. */
  public int indexOf(double distance) {
    return index(distance / width);
  }

  /** Class of a separation counted in widths, > 0. */
  static int index(double widths) {
    int whole = (int) widths;
    return whole == widths ? whole - 1 : whole;
  }

  private static double diagonal(Observations o) {
    if (o.size() == 0) {
      return 0;
    }
    double west = o.x(0);
    double east = west;
    double south = o.y(0);
    double north = south;
    for (int i = 1; i < o.size(); i++) {
      west = Math.min(west, o.x(i));
      east = Math.max(east, o.x(i));
      south = Math.min(south, o.y(i));
      north = Math.max(north, o.y(i));
    }
    return Math.hypot(east - west, north - south);
  }
}
