package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.likelihood.PooledOutcome;
import org.mottle.engine.likelihood.PooledVariogram;

/**
 * The variogram behind one or more maps.
 *
 * @param surveys whose readings are in it, by id
 * @param greens whose readings are in it, by id; one for a green's own variogram
 * @param stations in it
 * @param experimental semivariances by lag, to look at beside the model
 * @param outcome the model with what is left open of it, or why there is none
 */
public record MapVariogram(
    List<String> surveys,
    List<String> greens,
    int stations,
    ExperimentalVariogram experimental,
    PooledOutcome outcome) {

  public MapVariogram {
    surveys = List.copyOf(surveys);
    greens = List.copyOf(greens);
  }

  public long pairs() {
    return experimental.pairs();
  }

  public Optional<PooledVariogram> pooled() {
    return outcome instanceof PooledVariogram p ? Optional.of(p) : Optional.empty();
  }

  /** In words, for the reader of a map. */
  public String source() {
    String what =
        greens.size() == 1
            ? "the green's own variogram"
            : "a variogram pooled over " + greens.size() + " greens";
    String when = surveys.size() == 1 ? "" : " and " + surveys.size() + " surveys";
    return what + when + " (" + stations + " stations)";
  }
}
