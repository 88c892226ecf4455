package org.mottle.engine.kriging;

import java.util.concurrent.atomic.AtomicInteger;

/** Results under construction: each thread writes its own cells. */
final class EstimateArrays {
  private final double[] value;
  private final double[] variance;
  private final byte[] status;
  private final AtomicInteger clamped = new AtomicInteger();

  EstimateArrays(int n) {
    value = new double[n];
    variance = new double[n];
    status = new byte[n];
  }

  void none(int i, CellStatus why) {
    value[i] = Double.NaN;
    variance[i] = Double.NaN;
    status[i] = (byte) why.ordinal();
  }

  /** Stores an estimate, its variance clamped or, if far below zero, refused. */
  void put(int i, double newValue, double newVariance, double sill) {
    if (!Double.isFinite(newValue) || !(newVariance >= -Predictor.CLAMPED_SHARE * sill)) {
      none(i, CellStatus.ILL_CONDITIONED);
      return;
    }
    value[i] = newValue;
    if (newVariance < 0) {
      clamped.incrementAndGet();
      newVariance = 0;
    }
    variance[i] = newVariance;
  }

  /** NaN stays NaN. */
  void addVariance(int i, double more) {
    variance[i] += more;
  }

  Estimates toEstimates(double conditionEstimate) {
    return Estimates.of(value, variance, status, clamped.get(), conditionEstimate);
  }
}
