package org.mottle.engine.irrigation;

/**
 * One catch can of one run. What is not recorded is NaN, a place too.
 *
 * @param id unique in its green and run
 * @param greenId the green it stood on; empty when not recorded
 * @param run day or name of the run; empty when not recorded
 * @param x east, m
 * @param y north, m
 * @param measure what it caught
 * @param windMs wind during the run, m/s
 */
public record CatchCan(
    String id, String greenId, String run, double x, double y, Measure measure, double windMs) {

  /**
   * @param ml caught, 0 or more
   * @param mouthCm2 area of the mouth, cm²
   * @param minutes that the water ran, min
   */
  public record Measure(double ml, double mouthCm2, double minutes) {
    public Measure {
      if (!(ml >= 0) || Double.isInfinite(ml)) {
        throw new IllegalArgumentException("a can catches 0 ml or more, was " + ml);
      }
      if (mouthCm2 <= 0 || Double.isInfinite(mouthCm2)) {
        throw new IllegalArgumentException("a mouth is above 0 cm², was " + mouthCm2);
      }
      if (minutes <= 0 || Double.isInfinite(minutes)) {
        throw new IllegalArgumentException("a run is above 0 min, was " + minutes);
      }
    }

    /** 10 ml / cm², mm; NaN without the mouth. */
    public double depthMm() {
      return 10 * ml / mouthCm2;
    }

    /** mm/h; NaN without mouth or minutes. */
    public double rateMmH() {
      return 60 * depthMm() / minutes;
    }
  }

  public CatchCan {
    if (id == null || id.isBlank()) {
      throw new IllegalArgumentException("a can needs an id, was '" + id + "'");
    }
  }

  public boolean hasPlace() {
    return Double.isFinite(x) && Double.isFinite(y);
  }
}
