package org.mottle.engine.patch;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;

/**
 * The levels of the core and the envelope of dry or wet ground (Bolin and Lindgren 2015, whose sets
 * these are but for the specks): the core {p &ge; core} is the largest such set that lies inside
 * the true ground, the envelope {p &ge; envelope} the smallest that holds all of it, each with a
 * joint probability by the realisations. Connected places where that fails are ignored while they
 * are smaller than a speck: else one stray cell would decide, and on a green with few readings the
 * envelope would be nearly all of it.
 *
 * <p>Levels lie between the probabilities of two cells, so that the sets are the same by cells and
 * as drawn; ties go to the side that makes the core smaller and the envelope larger.
 *
 * @param core above 1 when nothing is that sure
 * @param envelope below 0 when it is the whole green
 */
record JointLevels(double core, double envelope) {
  private static final double BEYOND = 2;
  private static final double TIE = 4e-9;

  /**
   * @param ground of the green
   * @param p probability of each of its cells
   * @param kind dry or wet
   * @param excursions the realisations, at least one
   * @param rule says how sure and what a speck is
   */
  static JointLevels of(
      GreenGround ground, double[] p, ZoneClass kind, Excursions excursions, MarkRule rule) {
    int[] up = ascending(p);
    int[] down = new int[up.length];
    for (int i = 0; i < up.length; i++) {
      down[i] = up[up.length - 1 - i];
    }
    ConnectedGrowth growth = new ConnectedGrowth(ground, rule.speckM2());
    int n = excursions.realisations();
    int allowed = (int) Math.floor((1 - rule.confidence()) * n + 1e-9);
    int within = kept(n, allowed, r -> growth.before(down, excursions.words(kind, r), false));
    int beyond = kept(n, allowed, r -> growth.before(up, excursions.words(kind, r), true));
    return new JointLevels(coreLevel(p, down, within), envelopeLevel(p, up, beyond));
  }

  /** The most cells that can be taken while all but the allowed realisations agree. */
  private static int kept(int realisations, int allowed, IntUnaryOperator agrees) {
    int[] cells = new int[realisations];
    for (int r = 0; r < realisations; r++) {
      cells[r] = agrees.applyAsInt(r);
    }
    Arrays.sort(cells);
    return cells[Math.min(allowed, realisations - 1)];
  }

  private static double coreLevel(double[] p, int[] down, int within) {
    int n = untied(p, down, within);
    if (n == 0) {
      return BEYOND;
    }
    return n < down.length ? 0.5 * (p[down[n - 1]] + p[down[n]]) : -1;
  }

  private static double envelopeLevel(double[] p, int[] up, int beyond) {
    int n = untied(p, up, beyond);
    if (n == 0) {
      return -1;
    }
    return n < up.length ? 0.5 * (p[up[n - 1]] + p[up[n]]) : BEYOND;
  }

  /** So many of the first cells that the next one is not as likely as the last. */
  private static int untied(double[] p, int[] order, int count) {
    int n = count;
    while (n > 0 && n < order.length && Math.abs(p[order[n]] - p[order[n - 1]]) <= TIE) {
      n--;
    }
    return n;
  }

  /** The cells with a probability, unlikely ones first, equal ones in their order. */
  private static int[] ascending(double[] p) {
    Integer[] order = new Integer[p.length];
    int n = 0;
    for (int i = 0; i < p.length; i++) {
      if (!Double.isNaN(p[i])) {
        order[n++] = i;
      }
    }
    Arrays.sort(order, 0, n, (i, j) -> Double.compare(p[i], p[j]));
    int[] sorted = new int[n];
    for (int i = 0; i < n; i++) {
      sorted[i] = order[i];
    }
    return sorted;
  }
}
