package org.mottle.engine.terrain;

import java.util.Arrays;

/** A growing list of cells. Scratch. */
final class CellStack {
  private int[] cells = new int[256];
  private int size;

  void clear() {
    size = 0;
  }

  void add(int cell) {
    if (size == cells.length) {
      cells = Arrays.copyOf(cells, 2 * size);
    }
    cells[size++] = cell;
  }

  int get(int i) {
    return cells[i];
  }

  int size() {
    return size;
  }
}
