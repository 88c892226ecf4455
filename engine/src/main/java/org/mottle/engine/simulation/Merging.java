package org.mottle.engine.simulation;

import java.util.HashMap;
import java.util.Map;

/** Merges accumulators in the order of their stretches, whatever the order they come in. */
final class Merging<A extends RealisationAccumulator<A>> {
  private final A merged;
  private final Map<Integer, A> waiting = new HashMap<>();
  private int next;

  Merging(A empty) {
    this.merged = empty;
  }

  synchronized void put(int stretch, A filled) {
    waiting.put(stretch, filled);
    for (A due = waiting.remove(next); due != null; due = waiting.remove(next)) {
      merged.merge(due);
      next++;
    }
  }

  synchronized A all() {
    return merged;
  }
}
