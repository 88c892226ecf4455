package org.mottle.export.write;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Decimal numbers with a fixed number of decimals at most, zeros at the end dropped, never an
 * exponent: 12.5, -0.004, 3. Rounded half away from zero on the binary value. A number up to 2^53
 * in its last decimal is formatted without allocation beyond the text; larger ones exactly, slower.
 * Never prints "-0". Stateless.
 */
public final class FixedDecimals {
  private static final long[] POWER = powers();
  private static final double EXACT = 1L << 53;

  private FixedDecimals() {}

  public static String text(double value, int decimals) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a number in a file must be finite, was " + value);
    }
    double scaled = Math.abs(value) * POWER[decimals];
    if (scaled >= EXACT) {
      return large(value, decimals);
    }
    long units = (long) (scaled + 0.5);
    if (units == 0) {
      return "0";
    }
    return digits(value < 0, units, decimals);
  }

  private static String digits(boolean negative, long units, int decimals) {
    int left = decimals;
    while (left > 0 && units % 10 == 0) {
      units /= 10;
      left--;
    }
    char[] text = new char[24];
    int at = text.length;
    for (int digit = 0; units > 0 || digit <= left; digit++) {
      if (digit == left && left > 0) {
        text[--at] = '.';
      }
      text[--at] = (char) ('0' + units % 10);
      units /= 10;
    }
    if (negative) {
      text[--at] = '-';
    }
    return new String(text, at, text.length - at);
  }

  private static String large(double value, int decimals) {
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static long[] powers() {
    long[] powers = new long[16];
    powers[0] = 1;
    for (int i = 1; i < powers.length; i++) {
      powers[i] = 10 * powers[i - 1];
    }
    return powers;
  }
}
