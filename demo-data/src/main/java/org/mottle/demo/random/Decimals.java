package org.mottle.demo.random;

/**
 * Numbers as text with a fixed count of decimals, rounded half up, point as separator, never in
 * powers of ten. Integer arithmetic after one rounding, so that no library version or locale can
 * change a digit. Good for |value| below 9e15 / 10^digits.
 */
public final class Decimals {

  private Decimals() {}

  /** For example {@code fixed(-0.25, 1)} is {@code "-0.2"} and {@code fixed(3, 3)} "3.000". */
  public static String fixed(double value, int digits) {
    long unit = 1;
    for (int i = 0; i < digits; i++) {
      unit *= 10;
    }
    if (!(Math.abs(value) * unit < 9e15)) {
      throw new IllegalArgumentException(
          "cannot be written with " + digits + " decimals: " + value);
    }
    long scaled = Math.round(value * unit);
    StringBuilder text = new StringBuilder();
    if (scaled < 0) {
      text.append('-');
      scaled = -scaled;
    }
    text.append(scaled / unit);
    if (digits > 0) {
      String fraction = Long.toString(scaled % unit);
      text.append('.').append("0".repeat(digits - fraction.length())).append(fraction);
    }
    return text.toString();
  }

  /** The value rounded to so many decimals. */
  public static double rounded(double value, int digits) {
    double unit = 1;
    for (int i = 0; i < digits; i++) {
      unit *= 10;
    }
    return Math.round(value * unit) / unit;
  }
}
