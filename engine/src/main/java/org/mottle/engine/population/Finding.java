package org.mottle.engine.population;

import java.util.List;

/**
 * What the two populations come to, in words for the user: measurements and what they are
 * consistent with, never a diagnosis.
 *
 * @param advice what the map and the user are asked to do
 * @param seen what the readings show
 * @param why what that is consistent with, and why
 * @param next what to check or consider, in order
 * @param cautions what to keep in mind
 * @param cores stations a core is asked from, the driest first, then others to compare
 */
public record Finding(
    Advice advice,
    String seen,
    String why,
    List<String> next,
    List<String> cautions,
    List<StationRef> cores) {

  /** What is asked for. */
  public enum Advice {
    /** Map the two populations apart; test cores for water repellency. */
    MAP_APART_AND_TEST,
    /** Map as one population; a test of cores would settle what the pattern does not. */
    MAP_AS_ONE_AND_TEST,
    /** Map as one population. */
    MAP_AS_ONE
  }

  public Finding {
    next = List.copyOf(next);
    cautions = List.copyOf(cautions);
    cores = List.copyOf(cores);
  }

  /** The finding for two populations and the way the low readings lie. */
  public static Finding of(TwoFound found, SpotPattern pattern) {
    return new FindingText(found, pattern).finding();
  }

  /** The finding where two populations are not shown. */
  public static Finding of(CannotTell refused) {
    return new Finding(
        Advice.MAP_AS_ONE,
        refused.why().reason(),
        "the readings are taken as one population, which does not rule out a second",
        List.of(refused.why().remedy()),
        List.of(FindingText.DECISION),
        List.of());
  }
}
