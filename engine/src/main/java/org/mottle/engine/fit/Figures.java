package org.mottle.engine.fit;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in sentences: four significant digits, no trailing noughts. */
final class Figures {

  private Figures() {}

  static String of(double value) {
    return Double.isFinite(value)
        ? new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros().toPlainString()
        : String.valueOf(value);
  }
}
