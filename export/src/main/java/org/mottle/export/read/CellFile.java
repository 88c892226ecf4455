package org.mottle.export.read;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.mottle.export.crs.Crs;

/** A file of cells whose heading has been read and found right. */
interface CellFile {
  /** Name for messages. */
  String name();

  CellFrame frame();

  /** Its own or the given; empty when there is neither. */
  Optional<Crs> crs();

  HeightFacts heights();

  /** What was detected or decided on the way. */
  List<String> notes();

  /**
   * Reads rows in order, north first.
   *
   * @throws IOException when the file cannot be read
   * @throws org.mottle.export.problem.InputRefused when what it holds is wrong
   */
  void read(Part part, RowSink sink) throws IOException;

  /** Rows and columns that are wanted, ends excluded. */
  record Part(int firstRow, int endRow, int firstColumn, int endColumn) {
    Part joined(Part other) {
      return new Part(
          Math.min(firstRow, other.firstRow),
          Math.max(endRow, other.endRow),
          Math.min(firstColumn, other.firstColumn),
          Math.max(endColumn, other.endColumn));
    }

    int columns() {
      return endColumn - firstColumn;
    }
  }

  /** Takes one row; the array is used again for the next. */
  interface RowSink {
    /**
     * @param row from the north, 0 first
     * @param values as stored, NaN where there is none, from the first column wanted
     */
    void row(int row, double[] values);
  }
}
