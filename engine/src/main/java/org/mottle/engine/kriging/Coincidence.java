package org.mottle.engine.kriging;

import java.util.HashMap;
import java.util.Map;
import org.mottle.engine.observation.Observations;

/**
 * Which observations lie exactly at a place: there, and only there, the nugget is part of the
 * covariance. Immutable; O(n) memory.
 */
final class Coincidence {
  private static final int[] NONE = {};

  private record Place(double x, double y) {}

  private final Map<Place, int[]> rows = new HashMap<>();
  private final boolean duplicates;

  Coincidence(Observations observations) {
    boolean found = false;
    for (int i = 0; i < observations.size(); i++) {
      int[] before = rows.getOrDefault(place(observations.x(i), observations.y(i)), NONE);
      int[] with = java.util.Arrays.copyOf(before, before.length + 1);
      with[before.length] = i;
      rows.put(place(observations.x(i), observations.y(i)), with);
      found |= with.length > 1;
    }
    duplicates = found;
  }

  /** Whether any two observations share a place. */
  boolean duplicates() {
    return duplicates;
  }

  /** Rows of the observations exactly at a place, ascending; not to be written to. */
  int[] at(double x, double y) {
    return rows.getOrDefault(place(x, y), NONE);
  }

  /** Adding 0.0 makes one of 0.0 and -0.0. */
  private static Place place(double x, double y) {
    return new Place(x + 0.0, y + 0.0);
  }
}
