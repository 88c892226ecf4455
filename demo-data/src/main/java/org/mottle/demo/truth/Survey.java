package org.mottle.demo.truth;

import org.mottle.demo.site.Build;

/** The six survey days: water history, weather and the mean moisture they leave. */
public enum Survey {
  S1("2025-05-14", "07:30", "10:30", new Moisture(24.0, 7, 0.9), water("36", 18, "", 0), 3.0),
  S2("2025-05-17", "07:30", "10:30", new Moisture(18.5, 9, 1.0), water("108", 18, "", 0), 3.0),
  S3("2025-06-11", "06:30", "09:30", new Moisture(19.0, 7, 1.0), water("144", 6, "10", 5), 4.8),
  S4("2025-07-09", "06:00", "11:00", new Moisture(15.5, 8, 1.2), water("130", 4, "5", 3), 6.0),
  S5("2025-07-13", "08:00", "11:00", new Moisture(25.0, 7, 0.8), water("24", 22, "", 0), 4.0),
  S6("2025-09-03", "07:00", "10:00", new Moisture(20.5, 7, 1.0), water("96", 8, "10", 5), 3.2);

  /** Sill of the moisture field on sand, and on soil, %²; multiplied by the day's factor. */
  public static final double SAND_SILL = 3.0;

  public static final double SOIL_SILL = 4.0;
  public static final double SAND_RANGE_M = 12;
  public static final double SOIL_RANGE_M = 16;
  public static final double PERSISTENT_SHARE = 0.6;

  /** Fall of the readings while a survey lasts, % an hour. */
  public static final double DRYING_PCT_H = 0.35;

  /**
   * @param sandPct mean of the sand greens, % by volume
   * @param soilExtraPct how much wetter the soil green is
   * @param sillFactor of the day
   */
  public record Moisture(double sandPct, double soilExtraPct, double sillFactor) {}

  /**
   * @param rainHours hours since the last rain of 2 mm or more
   * @param rainMm how much fell
   * @param irrigationHours hours since irrigation; empty when none since the rain
   * @param irrigationMm how much was given
   */
  public record Water(
      String rainHours, double rainMm, String irrigationHours, double irrigationMm) {}

  private final String date;
  private final String start;
  private final String end;
  private final Moisture moisture;
  private final Water water;
  private final double et0;

  Survey(String date, String start, String end, Moisture moisture, Water water, double et0) {
    this.date = date;
    this.start = start;
    this.end = end;
    this.moisture = moisture;
    this.water = water;
    this.et0 = et0;
  }

  private static Water water(String rainHours, double rainMm, String irrigated, double mm) {
    return new Water(rainHours, rainMm, irrigated, mm);
  }

  public String date() {
    return date;
  }

  /** Local time, UTC+1, hh:mm. */
  public String start() {
    return start;
  }

  public String end() {
    return end;
  }

  /** Length of the survey, s. */
  public int seconds() {
    return clock(end) - clock(start);
  }

  /** Seconds from midnight to the start. */
  public int startSecond() {
    return clock(start);
  }

  private static int clock(String time) {
    return 3600 * Integer.parseInt(time.substring(0, 2)) + 60 * Integer.parseInt(time.substring(3));
  }

  public Moisture moisture() {
    return moisture;
  }

  public Water water() {
    return water;
  }

  /** Reference evapotranspiration, mm a day. */
  public double et0() {
    return et0;
  }

  /** Mean of a green of that build at the start, before the green's own offset. */
  public double meanPct(Build build) {
    return moisture.sandPct() + (build == Build.PUSH_UP_SOIL ? moisture.soilExtraPct() : 0);
  }

  /** Sill of the moisture field of a green of that build. */
  public double sill(Build build) {
    return moisture.sillFactor() * (build == Build.PUSH_UP_SOIL ? SOIL_SILL : SAND_SILL);
  }

  public static double rangeM(Build build) {
    return build == Build.PUSH_UP_SOIL ? SOIL_RANGE_M : SAND_RANGE_M;
  }
}
