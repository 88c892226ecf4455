package org.mottle.engine.patch;

import org.mottle.engine.check.Check;

/**
 * When dry and wet ground is outlined. {@link #defaults()} and the {@code with} methods build one.
 *
 * @param leastLevel no outline is honest when the Vorob'ev level lies below this and most of the
 *     expected ground is less likely so than not: it is expected somewhere, its place is not known
 * @param confidence joint probability of cores and envelopes
 * @param speckM2 connected places smaller than this are ignored when judging whether a place exists
 *     and whether a core or an envelope holds, m²
 * @param leastExistence a patch that exists with less probability is a spot
 * @param positionSdM standard deviation of a position along an axis, m
 * @param leastPartM2 parts of an outline, and holes in it, smaller than this are not drawn, m²;
 *     about a cell
 */
public record MarkRule(
    double leastLevel,
    double confidence,
    double speckM2,
    double leastExistence,
    double positionSdM,
    double leastPartM2) {

  public MarkRule {
    Check.within("leastLevel", leastLevel, 0, 1, "");
    Check.within("confidence", confidence, 0, 1, "");
    Check.above("speckM2", speckM2, 0, "m²");
    Check.within("leastExistence", leastExistence, 0, 1, "");
    Check.atLeast("positionSdM", positionSdM, 0, "m");
    Check.atLeast("leastPartM2", leastPartM2, 0, "m²");
  }

  /** 0.35, 0.9, 1 m², 0.5; positions without error; every part drawn. */
  public static MarkRule defaults() {
    return new MarkRule(0.35, 0.9, 1, 0.5, 0, 0);
  }

  public MarkRule withPositionSd(double metres) {
    return new MarkRule(leastLevel, confidence, speckM2, leastExistence, metres, leastPartM2);
  }

  public MarkRule withLeastPart(double m2) {
    return new MarkRule(leastLevel, confidence, speckM2, leastExistence, positionSdM, m2);
  }
}
