package org.mottle.engine.empirical;

/** Takes the pairs that a scan finds, a block at a time. */
interface PairSink {

  /**
   * @param distance [count] separations, m; some may be 0 or beyond the cutoff
   * @param difference [count] differences of the values; may be overwritten
   */
  void accept(double[] distance, double[] difference, int count);
}
