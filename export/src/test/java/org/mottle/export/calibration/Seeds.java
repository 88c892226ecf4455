package org.mottle.export.calibration;

import java.util.List;
import java.util.stream.LongStream;

/**
 * A run of seeds.
 *
 * @param use what its figures are for
 * @param first seed
 * @param last seed, included
 */
record Seeds(String use, long first, long last) {

  /** From words such as 101-140, or one number. */
  static Seeds parse(String use, String words) {
    String[] ends = words.split("-");
    try {
      long first = Long.parseLong(ends[0]);
      long last = ends.length > 1 ? Long.parseLong(ends[1]) : first;
      if (ends.length <= 2 && first <= last) {
        return new Seeds(use, first, last);
      }
    } catch (NumberFormatException e) {
      // told below, with the words
    }
    throw new IllegalArgumentException(
        "seeds for " + use + " are given as 1-20, were '" + words + "'");
  }

  List<Long> all() {
    return LongStream.rangeClosed(first, last).boxed().toList();
  }

  @Override
  public String toString() {
    return use + ", seeds " + first + " to " + last;
  }
}
