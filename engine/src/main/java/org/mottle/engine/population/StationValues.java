package org.mottle.engine.population;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.mottle.engine.check.Check;

/**
 * The stations of one green in one survey: a value each (the mean of its insertions), where it is,
 * and whether the operator chose it for what is seen there. Immutable; arrays are copied in and
 * never handed out.
 */
public final class StationValues {
  private final String survey;
  private final List<String> names;
  private final double[] value;
  private final double[] x;
  private final double[] y;
  private final boolean[] chosen;
  private final PositionError error;

  private StationValues(
      String survey,
      List<String> names,
      double[] value,
      double[] x,
      double[] y,
      boolean[] chosen,
      PositionError error) {
    this.survey = survey;
    this.names = names;
    this.value = value;
    this.x = x;
    this.y = y;
    this.chosen = chosen;
    this.error = error;
  }

  /**
   * @param survey name of the survey; empty when there is only one
   * @param value [n] moisture, % by volume
   * @param x [n] east, m
   * @param y [n] north, m
   * @param chosen [n] whether the station is a point of interest
   * @throws IllegalArgumentException for arrays of unequal length or numbers that are not finite
   */
  public static StationValues of(
      String survey, double[] value, double[] x, double[] y, boolean[] chosen) {
    int n = value.length;
    requireLength("x", x.length, n);
    requireLength("y", y.length, n);
    requireLength("chosen", chosen.length, n);
    for (int i = 0; i < n; i++) {
      Check.finite("value of station " + (i + 1), value[i], "% by volume");
      Check.finite("x of station " + (i + 1), x[i], "m");
      Check.finite("y of station " + (i + 1), y[i], "m");
    }
    return new StationValues(
        survey, List.of(), value.clone(), x.clone(), y.clone(), chosen.clone(), PositionError.NONE);
  }

  /** The same stations by the names their surveyor gave them; an empty name stays a number. */
  public StationValues withNames(List<String> stationNames) {
    requireLength("names", stationNames.size(), size());
    return new StationValues(survey, List.copyOf(stationNames), value, x, y, chosen, error);
  }

  /** The same stations at places that are known so well; exactly, where this is not said. */
  public StationValues withPositionError(PositionError positionError) {
    return new StationValues(survey, names, value, x, y, chosen, positionError);
  }

  public PositionError positionError() {
    return error;
  }

  public String survey() {
    return survey;
  }

  public int size() {
    return value.length;
  }

  /** The station's name, or its number from 1 where it has none. */
  public String name(int i) {
    return names.isEmpty() || names.get(i).isEmpty() ? Integer.toString(i + 1) : names.get(i);
  }

  public double value(int i) {
    return value[i];
  }

  public double x(int i) {
    return x[i];
  }

  public double y(int i) {
    return y[i];
  }

  /** Whether the station was chosen for what is seen there, and so says nothing of the share. */
  public boolean chosen(int i) {
    return chosen[i];
  }

  double[] values() {
    return value.clone();
  }

  double distance(int i, int j) {
    return Math.hypot(x[i] - x[j], y[i] - y[j]);
  }

  /** The other stations by distance; equal ones by number. */
  int[] nearestFirst(int i) {
    return Arrays.stream(others(i))
        .boxed()
        .sorted(
            (a, b) -> {
              int order = Double.compare(distance(i, a), distance(i, b));
              return order != 0 ? order : Integer.compare(a, b);
            })
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private int[] others(int i) {
    return IntStream.range(0, size()).filter(j -> j != i).toArray();
  }

  private static void requireLength(String what, int length, int wanted) {
    if (length != wanted) {
      throw new IllegalArgumentException(
          what + " has " + length + " entries where there are " + wanted + " stations");
    }
  }
}
