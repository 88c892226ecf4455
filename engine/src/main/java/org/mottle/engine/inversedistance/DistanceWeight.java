package org.mottle.engine.inversedistance;

/** Weights h^-power of squared distances, in place. Powers 1, 2 and 3 need no logarithm. */
final class DistanceWeight {

  private DistanceWeight() {}

  static void ofSquares(double power, double[] squared, int count) {
    if (power == 1) {
      for (int i = 0; i < count; i++) {
        squared[i] = 1 / Math.sqrt(squared[i]);
      }
    } else if (power == 2) {
      for (int i = 0; i < count; i++) {
        squared[i] = 1 / squared[i];
      }
    } else if (power == 3) {
      for (int i = 0; i < count; i++) {
        squared[i] = 1 / (squared[i] * Math.sqrt(squared[i]));
      }
    } else {
      for (int i = 0; i < count; i++) {
        squared[i] = Math.pow(squared[i], -power / 2);
      }
    }
  }
}
