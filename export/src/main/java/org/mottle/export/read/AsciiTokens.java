package org.mottle.export.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/**
 * The words of a text between blanks, one at a time, from bytes; numbers without a detour over
 * strings where that is exact: up to 15 digits and a power of ten up to 22 are both held exactly by
 * a double, so that one division rounds right.
 */
final class AsciiTokens {
  private static final int LONGEST = 64;
  private static final int EXACT_DIGITS = 15;
  private static final double[] TENS = new double[23];

  static {
    double ten = 1;
    for (int i = 0; i < TENS.length; i++) {
      TENS[i] = ten;
      ten *= 10;
    }
  }

  private final InputStream in;
  private final byte[] buffer = new byte[1 << 16];
  private final byte[] word = new byte[LONGEST];
  private int at;
  private int end;
  private int length;

  AsciiTokens(InputStream in) {
    this.in = in;
  }

  /** Goes on to the next word; false at the end. */
  boolean next() throws IOException {
    int c = read();
    while (c >= 0 && c <= ' ') {
      c = read();
    }
    length = 0;
    while (c > ' ') {
      if (length < LONGEST) {
        word[length] = (byte) c;
        length++;
      }
      c = read();
    }
    return length > 0;
  }

  /** The word, cut at 64 characters. */
  String text() {
    return new String(word, 0, length, StandardCharsets.ISO_8859_1);
  }

  /** The word as a number, "nan" too. */
  double number() {
    long digits = 0;
    int count = 0;
    int behind = -1;
    int i = length > 0 && (word[0] == '-' || word[0] == '+') ? 1 : 0;
    for (; i < length; i++) {
      int c = word[i];
      if (c >= '0' && c <= '9') {
        digits = digits * 10 + (c - '0');
        count++;
        behind += behind >= 0 ? 1 : 0;
      } else if (c == '.' && behind < 0) {
        behind = 0;
      } else {
        return slowly();
      }
      if (count > EXACT_DIGITS) {
        return slowly();
      }
    }
    if (count == 0) {
      return slowly();
    }
    double value = behind > 0 ? digits / TENS[behind] : digits;
    return word[0] == '-' ? -value : value;
  }

  private double slowly() {
    String text = text();
    if (text.equalsIgnoreCase("nan") || text.equalsIgnoreCase("-nan")) {
      return Double.NaN;
    }
    if (!Cells.isNumber(text, false) || Cells.isMissing(text)) {
      throw new NumberFormatException("'" + text + "'");
    }
    return Double.parseDouble(text);
  }

  private int read() throws IOException {
    if (at == end) {
      end = in.read(buffer);
      at = 0;
      if (end <= 0) {
        end = 0;
        return -1;
      }
    }
    return buffer[at++] & 0xFF;
  }
}
