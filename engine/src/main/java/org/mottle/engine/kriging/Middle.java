package org.mottle.engine.kriging;

/** Middle of the extent of a coordinate, the centre of the frames. */
final class Middle {

  private Middle() {}

  /** 0 for no values. */
  static double of(double[] values) {
    if (values.length == 0) {
      return 0;
    }
    double low = values[0];
    double high = values[0];
    for (double v : values) {
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    return low + (high - low) / 2;
  }
}
