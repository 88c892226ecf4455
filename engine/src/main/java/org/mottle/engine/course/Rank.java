package org.mottle.engine.course;

import java.util.List;
import org.mottle.engine.interval.Interval;

/**
 * Place of a green among those it can be compared with, 1 the most, and between which places it
 * surely lies: others whose whole 90 % interval lies above, or below, its own.
 *
 * @param place by the best figures
 * @param first it is no higher than this
 * @param last it is no lower than this
 * @param of how many are compared
 */
public record Rank(int place, int first, int last, int of) {

  /** The ranks of figures among each other, in their order. */
  static List<Rank> of(List<Interval> figures) {
    return figures.stream().map(f -> rank(f, figures)).toList();
  }

  private static Rank rank(Interval own, List<Interval> all) {
    int above = 0;
    int surelyAbove = 0;
    int surelyBelow = 0;
    for (Interval other : all) {
      above += other.best() > own.best() ? 1 : 0;
      surelyAbove += other.low() > own.high() ? 1 : 0;
      surelyBelow += other.high() < own.low() ? 1 : 0;
    }
    return new Rank(above + 1, surelyAbove + 1, all.size() - surelyBelow, all.size());
  }
}
