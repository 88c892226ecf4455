package org.mottle.engine.simulation;

/**
 * Takes in realisations and merges with others of its kind. Each is used by one thread at a time
 * and holds a stretch of realisations fixed beforehand; stretches are merged in their order, so
 * that the result has the same bytes for every number of threads.
 *
 * @param <A> the accumulator itself
 */
public interface RealisationAccumulator<A extends RealisationAccumulator<A>> {
  /**
   * Takes in one realisation; those of a stretch come in their order.
   *
   * @param index of the realisation, from 0
   * @param values [needed cells] lent for this call only
   */
  void add(int index, double[] values);

  /** Takes in what the accumulator of the next stretch holds. */
  void merge(A next);
}
