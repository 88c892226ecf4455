package org.mottle.export.cli;

import java.math.BigDecimal;

/**
 * Numbers in CSV: the shortest digits that read back as the same number, and nothing for NaN.
 * Coordinates and values of any survey stand without an exponent; it remains where plain digits
 * would be mostly zeros.
 */
final class CsvNumber {
  private static final double SMALLEST_PLAIN = 1e-6;
  private static final double LARGEST_PLAIN = 1e15;

  private CsvNumber() {}

  static String of(double value) {
    if (Double.isNaN(value)) {
      return "";
    }
    String shortest = Double.toString(value);
    double size = Math.abs(value);
    boolean plain = size >= SMALLEST_PLAIN && size < LARGEST_PLAIN;
    return plain && shortest.indexOf('E') >= 0
        ? new BigDecimal(shortest).toPlainString()
        : shortest;
  }
}
