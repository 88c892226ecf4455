package org.mottle.engine.terrain;

/**
 * The one neighbour that water runs to (D8; O'Callaghan & Mark 1984, Computer Vision, Graphics and
 * Image Processing 28): that of the steepest fall on the filled ground, diagonals over sqrt(2)
 * cells. Where nothing lies lower (level or filled ground) it is the neighbour from which the flood
 * came in; at an edge or void water leaves. Of equal falls the first clockwise from north is taken.
 * There are no rounds. Immutable.
 */
public final class FlowDirection {
  private static final double DIAGONAL = Math.sqrt(0.5);

  private final PriorityFlood flood;
  private final byte[] directions;

  private FlowDirection(PriorityFlood flood, byte[] directions) {
    this.flood = flood;
    this.directions = directions;
  }

  public static FlowDirection steepest(PriorityFlood flood) {
    ElevationModel model = flood.model();
    int columns = model.grid().columns();
    byte[] directions = new byte[model.grid().size()];
    for (int row = 0; row < model.grid().rows(); row++) {
      for (int column = 0; column < columns; column++) {
        int cell = row * columns + column;
        directions[cell] = model.has(cell) ? direction(flood, cell, row, column) : -1;
      }
    }
    return new FlowDirection(flood, directions);
  }

  private static byte direction(PriorityFlood flood, int cell, int row, int column) {
    double[] filled = flood.filledHeights();
    double steepest = 0;
    int found = flood.wayOut(cell);
    for (int k = 0; k < 8; k++) {
      int next = flood.model().neighbour(row, column, k);
      if (next >= 0) {
        double fall = (filled[cell] - filled[next]) * ((k & 1) == 0 ? 1 : DIAGONAL);
        if (fall > steepest) {
          steepest = fall;
          found = k;
        }
      }
    }
    return (byte) found;
  }

  public PriorityFlood flood() {
    return flood;
  }

  /** Direction that water takes: 0 north, 1 north-east, clockwise; -1 where it leaves or a void. */
  public int direction(int index) {
    return directions[index];
  }

  /** Index of the cell that water runs to; -1 where it leaves or the cell is a void. */
  public int receiver(int index) {
    int columns = flood.model().grid().columns();
    return directions[index] < 0
        ? -1
        : flood.model().neighbour(index / columns, index % columns, directions[index]);
  }
}
