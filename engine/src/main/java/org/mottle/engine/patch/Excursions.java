package org.mottle.engine.patch;

import java.util.Arrays;
import org.mottle.engine.check.Check;

/**
 * Which cells of which realisations lie below or above a target band: one bit each, so that 1,000
 * realisations of 10,000 cells take 2.5 MB and areas are counted 64 cells at a time. Cells are
 * those at which the surface is wanted ({@link org.mottle.engine.grid.GreenCells#neededCell}), in
 * their order. Immutable once built.
 */
public final class Excursions {
  private final int cells;
  private final long[][] below;
  private final long[][] above;

  private Excursions(int cells, long[][] below, long[][] above) {
    this.cells = cells;
    this.below = below;
    this.above = above;
  }

  /** None: no statement that needs realisations can be made. */
  public static Excursions none(int cells) {
    return builder(0, cells).build();
  }

  /**
   * @param realisations how many
   * @param cells how many cells each has
   */
  public static Builder builder(int realisations, int cells) {
    Check.atLeast("realisations", realisations, 0, "");
    Check.atLeast("cells", cells, 1, "");
    return new Builder(realisations, cells);
  }

  /** Takes realisations in any order; different threads may set different ones. */
  public static final class Builder {
    private final int cells;
    private final long[][] below;
    private final long[][] above;

    private Builder(int realisations, int cells) {
      this.cells = cells;
      this.below = new long[realisations][(cells + 63) >> 6];
      this.above = new long[realisations][(cells + 63) >> 6];
    }

    /**
     * Sets a whole realisation from its values; cells without value lie neither below nor above.
     */
    public Builder set(int realisation, double[] values, double low, double high) {
      if (values.length != cells) {
        throw new IllegalArgumentException(
            "a realisation has " + cells + " values, was " + values.length);
      }
      long[] lower = below[realisation];
      long[] upper = above[realisation];
      Arrays.fill(lower, 0);
      Arrays.fill(upper, 0);
      for (int i = 0; i < cells; i++) {
        lower[i >> 6] |= (values[i] < low ? 1L : 0L) << i;
        upper[i >> 6] |= (values[i] > high ? 1L : 0L) << i;
      }
      return this;
    }

    /** Marks one cell as below the band. */
    public Builder markBelow(int realisation, int cell) {
      below[realisation][cell >> 6] |= 1L << cell;
      return this;
    }

    /** Marks one cell as above the band. */
    public Builder markAbove(int realisation, int cell) {
      above[realisation][cell >> 6] |= 1L << cell;
      return this;
    }

    /** The realisations set so far; the builder must not be used after. */
    public Excursions build() {
      return new Excursions(cells, below, above);
    }
  }

  public int realisations() {
    return below.length;
  }

  /** Number of cells of each realisation. */
  public int cells() {
    return cells;
  }

  public boolean below(int realisation, int cell) {
    return (below[realisation][cell >> 6] >>> cell & 1) == 1;
  }

  public boolean above(int realisation, int cell) {
    return (above[realisation][cell >> 6] >>> cell & 1) == 1;
  }

  /**
   * Area of the ground that is dry, wet or in band, realisation by realisation, m².
   *
   * @param cls dry, wet or in band
   * @param ground where it is counted
   */
  public double[] areas(ZoneClass cls, CellWeights ground) {
    double[] areas = new double[below.length];
    for (int r = 0; r < areas.length; r++) {
      if (cls == ZoneClass.IN_BAND) {
        areas[r] = ground.areaOfNeither(below[r], above[r]);
      } else {
        areas[r] = ground.area(words(cls, r));
      }
    }
    return areas;
  }

  /** The bits of a realisation, cell i at bit i mod 64 of word i / 64. */
  long[] words(ZoneClass kind, int realisation) {
    return switch (kind) {
      case DRY -> below[realisation];
      case WET -> above[realisation];
      default -> throw new IllegalArgumentException("excursions are dry or wet, was " + kind);
    };
  }
}
