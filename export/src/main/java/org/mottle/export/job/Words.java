package org.mottle.export.job;

import java.util.Locale;

/** Figures as they are spoken: no more digits than they are worth. Data keep every digit. */
final class Words {
  private static final double LARGE_M2 = 20;

  private Words() {}

  /** To a square metre; small ones to half a square metre. */
  static String area(double m2) {
    double half = Math.rint(2 * m2) / 2;
    return m2 >= LARGE_M2 || half == Math.rint(half)
        ? String.format(Locale.ROOT, "%.0f", m2 >= LARGE_M2 ? m2 : half)
        : String.format(Locale.ROOT, "%.1f", half);
  }

  /** An area with its interval: 40 m² (20 to 70). */
  static String area(double m2, double low, double high) {
    return area(m2) + " m² (" + area(low) + " to " + area(high) + ")";
  }
}
