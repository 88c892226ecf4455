package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A short open walk over stations: nearest neighbour from the southernmost, then 2-opt. */
final class WalkOrder {

  private WalkOrder() {}

  static List<Station> of(List<Station> stations) {
    List<Station> left = new ArrayList<>(stations);
    List<Station> walk = new ArrayList<>();
    Station next = left.get(0);
    for (Station s : left) {
      if (s.place().y() < next.place().y()) {
        next = s;
      }
    }
    while (true) {
      walk.add(next);
      left.remove(next);
      if (left.isEmpty()) {
        break;
      }
      Station here = next;
      next = left.get(0);
      for (Station s : left) {
        if (metres(here, s) < metres(here, next)) {
          next = s;
        }
      }
    }
    while (uncross(walk)) {
      continue;
    }
    return walk;
  }

  /** Numbers the stations from 1 in the order given. */
  static List<Station> numbered(List<Station> walk, String prefix) {
    List<Station> named = new ArrayList<>();
    for (Station station : walk) {
      named.add(station.named(prefix + (named.size() + 1)));
    }
    return named;
  }

  /** Turns the first stretch round that shortens the walk by more than a millimetre. */
  private static boolean uncross(List<Station> walk) {
    int n = walk.size();
    for (int i = 0; i < n - 2; i++) {
      for (int j = i + 2; j < n; j++) {
        double before = metres(walk.get(i), walk.get(i + 1));
        double after = metres(walk.get(i), walk.get(j));
        if (j + 1 < n) {
          before += metres(walk.get(j), walk.get(j + 1));
          after += metres(walk.get(i + 1), walk.get(j + 1));
        }
        if (after < before - 0.001) {
          Collections.reverse(walk.subList(i + 1, j + 1));
          return true;
        }
      }
    }
    return false;
  }

  private static double metres(Station a, Station b) {
    return a.place().distance(b.place());
  }
}
