package org.mottle.export.style;

/** Which features a rule is about. */
public sealed interface Condition {

  /** Every feature. */
  record Every() implements Condition {}

  /**
   * Features with one value of a field.
   *
   * @param value text or whole number, as the field holds it
   */
  record Is(String field, Object value) implements Condition {
    public Is {
      if (!(value instanceof String) && !(value instanceof Long)) {
        throw new IllegalArgumentException(
            "a class of " + field + " is a text or a whole number, was " + value);
      }
    }
  }

  /**
   * Features with a value above {@code low} up to and with {@code high}; an end may be infinite.
   */
  record Within(String field, double low, double high) implements Condition {
    public Within {
      if (!(low < high)) {
        throw new IllegalArgumentException(
            "a class of " + field + " goes upwards, was " + low + " to " + high);
      }
    }
  }

  /** Features of no other rule, those without a value among them. */
  record Otherwise(String field) implements Condition {}

  /** Field the condition reads; empty of every feature. */
  default String readField() {
    if (this instanceof Is is) {
      return is.field();
    }
    if (this instanceof Within within) {
      return within.field();
    }
    return this instanceof Otherwise otherwise ? otherwise.field() : "";
  }
}
