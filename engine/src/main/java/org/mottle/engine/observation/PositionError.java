package org.mottle.engine.observation;

import org.mottle.engine.check.Check;

/**
 * How far the recorded places may be from the true ones: true place = recorded place + shift +
 * jitter. The jitter of each observation is its own, the shift is common to all observations of the
 * set; both are Gaussian, centred on 0, independent, and the same along every axis. Immutable; the
 * array is copied in and out.
 *
 * @param jitterSdM [n] standard deviation per axis of each observation's own error, m; 0 when exact
 * @param shiftSdM standard deviation per axis of the common shift, m; 0 for none
 */
public record PositionError(double[] jitterSdM, double shiftSdM) {

  public PositionError {
    jitterSdM = jitterSdM.clone();
    for (int i = 0; i < jitterSdM.length; i++) {
      Check.atLeast("position error of observation " + (i + 1), jitterSdM[i], 0, "m");
    }
    Check.atLeast("common shift of the positions", shiftSdM, 0, "m");
  }

  /** Places that are exact. */
  static PositionError none(int n) {
    return new PositionError(new double[n], 0);
  }

  @Override
  public double[] jitterSdM() {
    return jitterSdM.clone();
  }

  /** Standard deviation per axis of the jitter of observation {@code i}, m. */
  public double jitterSdM(int i) {
    return jitterSdM[i];
  }

  public int size() {
    return jitterSdM.length;
  }

  /** Whether there is neither jitter nor shift. */
  public boolean exact() {
    return shiftSdM == 0 && !jittered();
  }

  /** Whether any observation has an error of its own. */
  public boolean jittered() {
    for (double sd : jitterSdM) {
      if (sd > 0) {
        return true;
      }
    }
    return false;
  }
}
