package org.mottle.engine.drainage;

import java.util.List;

/**
 * A hypothesis with its evidence.
 *
 * @param hypothesis which
 * @param score sum of the logarithms of its evidence ratios against none of these; 0 for that
 * @param probability after the evidence
 * @param speaksFor lines that raise it, the strongest first
 * @param against lines that lower it, the strongest first
 */
public record HypothesisScore(
    Hypothesis hypothesis,
    double score,
    double probability,
    List<EvidenceLine> speaksFor,
    List<EvidenceLine> against) {

  /**
   * One sign.
   *
   * @param sign which
   * @param logRatio what it adds to the score
   * @param text what was seen, with the figure
   */
  public record EvidenceLine(Sign sign, double logRatio, String text) {}

  public HypothesisScore {
    speaksFor = List.copyOf(speaksFor);
    against = List.copyOf(against);
  }
}
