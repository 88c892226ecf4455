package org.mottle.engine.patch;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.interval.Interval;

/** What probabilities and realisations say of dry, or of wet, ground in sets of cells. */
final class SeenGround {
  private final GreenGround ground;
  private final double[] p;
  private final ZoneClass kind;
  private final Excursions excursions;
  private final ConnectedGrowth growth;

  /**
   * @param ground of the green
   * @param p probability of each of its cells; NaN where there is none
   * @param kind dry or wet
   * @param excursions the realisations
   * @param speckM2 what is smaller does not exist, m²
   */
  SeenGround(
      GreenGround ground, double[] p, ZoneClass kind, Excursions excursions, double speckM2) {
    this.ground = ground;
    this.p = p;
    this.kind = kind;
    this.excursions = excursions;
    this.growth = new ConnectedGrowth(ground, speckM2);
  }

  /** Expected area in some cells, m². */
  double expectedM2(int[] cells) {
    double sum = 0;
    for (int cell : cells) {
      sum += Double.isNaN(p[cell]) ? 0 : p[cell] * ground.areaM2(cell);
    }
    return sum;
  }

  /** Interval of the area in some cells, m². */
  Interval area(int[] cells) {
    return Interval.of(excursions.areas(kind, ground.weights(cells)));
  }

  /** Share of the realisations with a connected place, no speck, in some cells. */
  double existence(int[] cells) {
    int count = 0;
    for (int r = 0; r < excursions.realisations(); r++) {
      if (growth.before(cells, excursions.words(kind, r), true) < cells.length) {
        count++;
      }
    }
    return (double) count / excursions.realisations();
  }

  /** Those of some cells whose probability is at least a level. */
  int[] atLeast(int[] cells, double level) {
    return Arrays.stream(cells).filter(cell -> p[cell] >= level).toArray();
  }

  /** For cells with at least a probability, the connected place they are in; -1 for others. */
  int[] places(double level) {
    boolean[] counts = new boolean[p.length];
    for (int i = 0; i < p.length; i++) {
      counts[i] = p[i] >= level;
    }
    return growth.parts(counts);
  }

  /** The cell nearest to a point. */
  int nearest(Coordinate point) {
    int best = 0;
    for (int i = 1; i < p.length; i++) {
      if (squared(i, point) < squared(best, point)) {
        best = i;
      }
    }
    return best;
  }

  /** The cells within a distance of a point. */
  int[] within(Coordinate point, double distanceM) {
    int[] found = new int[p.length];
    int n = 0;
    for (int i = 0; i < p.length; i++) {
      if (squared(i, point) <= distanceM * distanceM) {
        found[n++] = i;
      }
    }
    return Arrays.copyOf(found, n);
  }

  private double squared(int cell, Coordinate point) {
    double dx = ground.x(cell) - point.x;
    double dy = ground.y(cell) - point.y;
    return dx * dx + dy * dy;
  }
}
