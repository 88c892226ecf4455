package org.mottle.engine.population;

import java.util.Arrays;
import java.util.List;

/** Eighteen planned stations 5 m apart, one of them low, and six points of interest round it. */
final class Spots {
  static final double[][] POINTS = {{11, 5.5}, {9, 6}, {10.5, 3.5}, {8.8, 4.2}, {12, 4.4}, {10, 7}};

  private Spots() {}

  static TwoFound atPointsOfInterest() {
    double[] noise = new InventedGreens(41).normal(24, 0, 1.2);
    double[] value = new double[24];
    double[] x = new double[24];
    double[] y = new double[24];
    boolean[] chosen = new boolean[24];
    for (int i = 0; i < 18; i++) {
      x[i] = 5 * (i % 6);
      y[i] = 5 * (i / 6);
      value[i] = (x[i] == 10 && y[i] == 5 ? 9 : 19) + noise[i];
    }
    for (int p = 0; p < POINTS.length; p++) {
      x[18 + p] = POINTS[p][0];
      y[18 + p] = POINTS[p][1];
      value[18 + p] = 9 + noise[18 + p];
      chosen[18 + p] = true;
    }
    StationValues values =
        StationValues.of("S4", value, x, y, chosen).withNames(Arrays.asList(names()));
    return (TwoFound) TwoPopulations.test(List.of(values));
  }

  private static String[] names() {
    String[] names = new String[24];
    Arrays.setAll(names, i -> i < 18 ? Integer.toString(i + 1) : "P" + (i - 17));
    return names;
  }
}
