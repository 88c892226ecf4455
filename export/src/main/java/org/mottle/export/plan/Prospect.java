package org.mottle.export.plan;

import java.util.List;
import java.util.Optional;

/**
 * What the readings of a plan could tell, before any is taken.
 *
 * @param mapSdPct expected mean kriging standard deviation over the green, % by volume; NaN when it
 *     cannot be said
 * @param mapBy whose variogram says so: given, or borrowed
 * @param meanHalfPct half width of the 95 % interval of the green's mean, % by volume; NaN when the
 *     places say nothing of the mean
 * @param meanBy what that interval is of, or why there is none
 * @param found what could be found and what not, one sentence each
 */
public record Prospect(
    double mapSdPct, String mapBy, double meanHalfPct, String meanBy, List<String> found) {

  public Prospect {
    found = List.copyOf(found);
  }

  /** The sentence in the middle, or the only one: of spots neither the smallest nor the largest. */
  Optional<String> foundInShort() {
    return found.isEmpty() ? Optional.empty() : Optional.of(found.get(found.size() / 2));
  }
}
