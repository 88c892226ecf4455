package org.mottle.engine.population;

import java.util.stream.IntStream;

/**
 * Whether the low readings lie scattered among the others, as water-repellent spots do, or hang
 * together, as the ground of a dead sprinkler does: the values alone cannot tell the two apart.
 *
 * <p>A join count (Moran 1948, J. R. Stat. Soc. B 10:243-251) on the survey with the most low
 * readings at stations that were not chosen: the share of low ones among the {@value
 * LowNeighbours#NEAREST} nearest stations, mean of those low readings. It is held against two
 * worlds of {@value #DRAWS} seeded draws each: in the one low readings fall on any station, in the
 * other on the stations nearest to some centre, in an outline that is irregular, up to three times
 * longer than wide, and as often wrong as the memberships are. Points of interest count as
 * neighbours but are never moved: they were chosen because they looked dry. O(draws · n log n).
 *
 * @param verdict the answer
 * @param survey the survey looked at, from 0
 * @param lowPlanned low readings there at stations that were not chosen
 * @param planned stations there that were not chosen
 * @param lowNeighbours the join count; NaN where none was made
 * @param asScattered how often readings that fall anywhere hang together at least as much; NaN
 *     where there was no test
 * @param asPatch how often a patch hangs together at most as much; NaN where there was no test
 */
public record SpotPattern(
    Verdict verdict,
    int survey,
    int lowPlanned,
    int planned,
    double lowNeighbours,
    double asScattered,
    double asPatch) {

  /** How the low readings lie. */
  public enum Verdict {
    /** Among the others: a patch would hardly look like this. */
    SCATTERED,
    /**
     * Nearly all at points of interest; the other stations met too few to outline a patch (fewer
     * than the four that an outline needs).
     */
    SMALL,
    /** Side by side: chance would hardly put them so. */
    TOGETHER,
    /** Too few, or in between. */
    CANNOT_TELL
  }

  static final int DRAWS = 999;
  private static final double LEVEL = 0.05;

  /** A patch needs as many stations on it before it can be outlined. */
  private static final int OUTLINE = 4;

  private static final int FEWEST_FOR_TEST = 3;

  /** Fewer stations than this carry no map, and do not show that low ground is rare. */
  private static final int FEWEST_PLANNED = 12;

  /**
   * @param seed of the draws
   */
  public static SpotPattern of(TwoFound found, long seed) {
    int survey =
        IntStream.range(0, found.surveys().size())
            .boxed()
            .reduce((a, b) -> moreTelling(found, a, b) ? b : a)
            .orElseThrow();
    LowNeighbours low = new LowNeighbours(found, survey);
    int k = low.lowPlanned();
    if (k < OUTLINE && low.lowChosen() >= k && low.lowChosen() > 0) {
      Verdict verdict = low.planned() >= FEWEST_PLANNED ? Verdict.SMALL : Verdict.CANNOT_TELL;
      return untested(verdict, survey, low);
    }
    if (k < FEWEST_FOR_TEST || k == low.planned()) {
      return untested(Verdict.CANNOT_TELL, survey, low);
    }
    return tested(survey, low, seed);
  }

  /** Whether the verdict goes with water-repellent spots rather than with an ordinary dry patch. */
  public boolean spotLike() {
    return verdict == Verdict.SCATTERED || verdict == Verdict.SMALL;
  }

  private static boolean moreTelling(TwoFound found, int a, int b) {
    int ofA = new LowNeighbours(found, a).lowPlanned();
    int ofB = new LowNeighbours(found, b).lowPlanned();
    return ofB > ofA || ofB == ofA && found.lowStations(b).length > found.lowStations(a).length;
  }

  private static SpotPattern untested(Verdict verdict, int survey, LowNeighbours low) {
    return new SpotPattern(
        verdict, survey, low.lowPlanned(), low.planned(), Double.NaN, Double.NaN, Double.NaN);
  }

  private static SpotPattern tested(int survey, LowNeighbours low, long seed) {
    double seen = low.observed();
    LowNeighbours.Draws draws = low.draws(seed);
    int asScattered = 1;
    int asPatch = 1;
    for (int d = 0; d < DRAWS; d++) {
      asScattered += draws.anywhere() >= seen - 1e-12 ? 1 : 0;
      asPatch += draws.patch() <= seen + 1e-12 ? 1 : 0;
    }
    double pScattered = asScattered / (DRAWS + 1.0);
    double pPatch = asPatch / (DRAWS + 1.0);
    return new SpotPattern(
        verdict(pScattered, pPatch),
        survey,
        low.lowPlanned(),
        low.planned(),
        seen,
        pScattered,
        pPatch);
  }

  private static Verdict verdict(double pScattered, double pPatch) {
    if (pScattered <= LEVEL && pPatch > LEVEL) {
      return Verdict.TOGETHER;
    }
    return pPatch <= LEVEL && pScattered > LEVEL ? Verdict.SCATTERED : Verdict.CANNOT_TELL;
  }
}
