package org.mottle.export.settings;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** The known word nearest to a mistyped one, by edit distance (Levenshtein 1966). */
public final class Nearest {

  private Nearest() {}

  /** The nearest of {@code known}, if it is near enough to be what was meant. */
  public static Optional<String> to(String typed, Collection<String> known) {
    return known.stream()
        .min(Comparator.<String>comparingInt(k -> distance(typed, k)).thenComparing(k -> k))
        .filter(k -> distance(typed, k) <= Math.max(2, Math.max(typed.length(), k.length()) / 2));
  }

  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(substituted, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
