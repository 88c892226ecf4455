package org.mottle.engine.irrigation;

import java.util.List;
import org.mottle.engine.survey.WaterHistory;

/**
 * What the moisture of one green in one survey says of one of its heads: a suggestion where to
 * look, never that a head is at fault.
 *
 * @param greenId the green
 * @param surveyId the survey
 * @param head which head
 * @param history what the survey can show
 * @param evidence figures
 * @param verdict what is suggested
 * @param words why
 */
public record HeadFinding(
    String greenId,
    String surveyId,
    Head head,
    WaterHistory history,
    Evidence evidence,
    Verdict verdict,
    Words words) {

  /**
   * Figures; NaN where the survey could not be tested.
   *
   * @param effectPct shortfall to expect if there is one, at the station where the head's share of
   *     the water is greatest, % by volume, below 0
   * @param effectSd its standard deviation
   * @param probability that this head gives too little, from this survey and those seen beside it
   * @param combined the same with all surveys after irrigation; decides what is suggested
   * @param ground probability that the ground of this head is dry whatever it is given: soil, slope
   * @param spot probability that one dry or wet place of another cause is what is seen
   * @param rank among the heads of the green in this survey, 1 the first; 0 where not tested
   */
  public record Evidence(
      double effectPct,
      double effectSd,
      double probability,
      double combined,
      double ground,
      double spot,
      int rank) {
    static final Evidence NONE =
        new Evidence(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);
  }

  /** What is suggested. */
  public enum Verdict {
    /** Look at this head. */
    LOOK("look at this head"),
    /** Consider looking at it. */
    CONSIDER("consider looking at this head"),
    /** Nothing points to it. */
    NOT_SUGGESTED("nothing points to this head"),
    /** The survey cannot tell. */
    CANNOT_TELL("cannot tell");

    private final String label;

    Verdict(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /**
   * Reasons, in words.
   *
   * @param speaksFor what speaks for a shortfall of this head
   * @param against what speaks against it, or for another cause
   * @param next what to check or consider next; empty where there is nothing
   */
  public record Words(List<String> speaksFor, List<String> against, String next) {
    public Words {
      speaksFor = List.copyOf(speaksFor);
      against = List.copyOf(against);
    }
  }
}
