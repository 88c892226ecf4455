package org.mottle.export.schema;

import java.time.LocalDate;

/**
 * What a field can hold. Each type names the one Java class of its values; nothing recorded is
 * {@code null} in every type.
 */
public enum FieldType {
  /** Unicode text; an empty text is nothing recorded. */
  TEXT(String.class),
  /** Whole number. */
  INTEGER(Long.class),
  /** Decimal number; NaN and the infinities are nothing recorded. */
  REAL(Double.class),
  /** Calendar date without a time. */
  DATE(LocalDate.class);

  private final Class<?> valueClass;

  FieldType(Class<?> valueClass) {
    this.valueClass = valueClass;
  }

  public Class<?> valueClass() {
    return valueClass;
  }
}
