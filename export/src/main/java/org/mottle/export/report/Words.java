package org.mottle.export.report;

import java.util.Locale;
import org.mottle.engine.interval.Interval;

/** Figures as they are spoken: no more digits than they are worth. Data keep every digit. */
public final class Words {
  private static final double LARGE_M2 = 20;

  private Words() {}

  /** To a square metre; small ones to half a square metre. */
  public static String area(double m2) {
    double half = Math.rint(2 * m2) / 2;
    return m2 >= LARGE_M2 || half == Math.rint(half)
        ? String.format(Locale.ROOT, "%.0f", m2 >= LARGE_M2 ? m2 : half)
        : String.format(Locale.ROOT, "%.1f", half);
  }

  /** An area with its interval: 40 m² (20 to 70). */
  public static String area(double m2, double low, double high) {
    return area(m2) + " m² (" + area(low) + " to " + area(high) + ")";
  }

  /** Litres to 5 L. */
  public static String litres(double litres) {
    return String.format(Locale.ROOT, "%.0f", 5 * Math.rint(litres / 5));
  }

  /** Litres with their interval: 440 L (210 to 690). */
  public static String litres(Interval litres) {
    return litres(litres.best())
        + " L ("
        + litres(litres.low())
        + " to "
        + litres(litres.high())
        + ")";
  }

  /** A share in whole per cent with its interval: 12 % (4 to 21); empty where not known. */
  public static String percent(Interval share) {
    if (!share.known()) {
      return "";
    }
    String best = String.format(Locale.ROOT, "%.0f %%", 100 * share.best());
    return Double.isNaN(share.low())
        ? best
        : best
            + String.format(Locale.ROOT, " (%.0f to %.0f)", 100 * share.low(), 100 * share.high());
  }

  /** A probability as it is spoken: 8 in 10; in twentieths near the ends. */
  public static String chance(double p) {
    if (Double.isNaN(p)) {
      return "not known";
    }
    long twentieths = Math.round(20 * p);
    if (twentieths >= 20) {
      return "more than 19 in 20";
    }
    if (twentieths <= 0) {
      return "less than 1 in 20";
    }
    return twentieths % 2 == 0 ? twentieths / 2 + " in 10" : twentieths + " in 20";
  }
}
