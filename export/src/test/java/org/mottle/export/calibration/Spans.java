package org.mottle.export.calibration;

/**
 * One interval a cell.
 *
 * @param low [cells] lower ends, % by volume
 * @param high [cells] upper ends, % by volume
 */
record Spans(double[] low, double[] high) {

  /** The central interval between two quantiles, given as a normal's half width in SD. */
  static Spans central(CellDistribution cells, double z) {
    double[] low = new double[cells.cells()];
    double[] high = new double[low.length];
    for (int i = 0; i < low.length; i++) {
      low[i] = cells.quantile(i, -z);
      high[i] = cells.quantile(i, z);
    }
    return new Spans(low, high);
  }

  boolean holds(int cell, double value) {
    return value >= low[cell] && value <= high[cell];
  }
}
