package org.mottle.engine.precision;

import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.simulation.NormalStream;
import org.mottle.engine.variogram.NestedModel;

/**
 * Visits to a green whose local mean is a Gaussian field of mean 0 with the structures of a
 * variogram: the stations are missed by the errors of their places, the readings are the field
 * where the probe went in plus noise. z = L e with L Lᵀ the covariance at the true places (Cressie
 * 1993, sec. 3.6.1), factored once where the places are exact, n³/6 operations a visit otherwise.
 * Scratch memory; not for several threads.
 */
final class SimulatedVisit {
  /** Two stations at one place are one number drawn twice: this share of the sill parts them. */
  private static final double RIDGE = 1e-10;

  private final Observations stations;
  private final PositionError error;
  private final NestedModel structures;
  private final double ridge;
  private final double[][] root;
  private final double[] x;
  private final double[] y;
  private final double[] value;

  SimulatedVisit(Observations stations, NestedModel model) {
    int n = stations.size();
    this.stations = stations;
    this.error = stations.positionError();
    this.structures = model.withNugget(0);
    this.ridge = RIDGE * model.sill();
    this.root = new double[n][n];
    this.x = stations.xs();
    this.y = stations.ys();
    this.value = new double[n];
    factor();
  }

  /** Another visit, from the numbers of its own stream. */
  void draw(NormalStream normal) {
    if (!error.exact()) {
      double shiftX = error.shiftSdM() * normal.next();
      double shiftY = error.shiftSdM() * normal.next();
      for (int i = 0; i < x.length; i++) {
        x[i] = stations.x(i) + shiftX + error.jitterSdM(i) * normal.next();
        y[i] = stations.y(i) + shiftY + error.jitterSdM(i) * normal.next();
      }
      factor();
    }
    java.util.Arrays.fill(value, 0);
    for (int j = 0; j < value.length; j++) {
      double e = normal.next();
      for (int i = j; i < value.length; i++) {
        value[i] += root[i][j] * e;
      }
    }
    for (int i = 0; i < value.length; i++) {
      value[i] += Math.sqrt(stations.measurementVariance(i)) * normal.next();
    }
  }

  /** Lower root of the covariance of the field at the places, by rows. */
  private void factor() {
    double sill = structures.sill();
    for (int i = 0; i < x.length; i++) {
      double[] row = root[i];
      for (int j = 0; j < i; j++) {
        double sum = sill - structures.semivariance(x[i] - x[j], y[i] - y[j]);
        double[] other = root[j];
        for (int k = 0; k < j; k++) {
          sum -= row[k] * other[k];
        }
        row[j] = sum / other[j];
      }
      double left = sill;
      for (int k = 0; k < i; k++) {
        left -= row[k] * row[k];
      }
      row[i] = Math.sqrt(Math.max(left, ridge));
    }
  }

  /** What station {@code i} reads. */
  double value(int i) {
    return value[i];
  }

  /** Whether the probe went in within a circle at station {@code i}. */
  boolean within(int i, double centreX, double centreY, double squaredRadius) {
    double dx = x[i] - centreX;
    double dy = y[i] - centreY;
    return dx * dx + dy * dy <= squaredRadius;
  }
}
