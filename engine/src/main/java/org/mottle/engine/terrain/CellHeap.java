package org.mottle.engine.terrain;

import java.util.Arrays;

/** Cells waiting to be flooded, lowest first: a heap with four children a node. Scratch. */
final class CellHeap {
  private double[] levels = new double[1024];
  private int[] cells = new int[1024];
  private int size;

  boolean isEmpty() {
    return size == 0;
  }

  void add(double level, int cell) {
    if (size == levels.length) {
      int more = (int) Math.min(Integer.MAX_VALUE - 8L, 2L * size);
      levels = Arrays.copyOf(levels, more);
      cells = Arrays.copyOf(cells, more);
    }
    int at = size++;
    while (at > 0) {
      int parent = (at - 1) >> 2;
      if (levels[parent] <= level) {
        break;
      }
      levels[at] = levels[parent];
      cells[at] = cells[parent];
      at = parent;
    }
    levels[at] = level;
    cells[at] = cell;
  }

  /** The cell of the lowest level, taken out. */
  int poll() {
    int lowest = cells[0];
    size--;
    double level = levels[size];
    int cell = cells[size];
    int at = 0;
    while (true) {
      int first = 4 * at + 1;
      if (first >= size) {
        break;
      }
      int least = first;
      int end = Math.min(first + 4, size);
      for (int child = first + 1; child < end; child++) {
        if (levels[child] < levels[least]) {
          least = child;
        }
      }
      if (levels[least] >= level) {
        break;
      }
      levels[at] = levels[least];
      cells[at] = cells[least];
      at = least;
    }
    levels[at] = level;
    cells[at] = cell;
    return lowest;
  }
}
