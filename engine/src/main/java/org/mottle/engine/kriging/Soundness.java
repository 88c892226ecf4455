package org.mottle.engine.kriging;

/**
 * Whether a kriging system could be solved.
 *
 * @param status {@code ESTIMATED} if so
 * @param conditionEstimate ‖C‖₁ ‖C⁻¹‖₁, estimated; infinite where C has no inverse
 * @param reason what is wrong and what helps; empty if nothing is
 */
public record Soundness(CellStatus status, double conditionEstimate, String reason) {

  /** Beyond this the solution has too few digits left to be given out. */
  public static final double LARGEST_CONDITION = 1e12;

  public boolean sound() {
    return status == CellStatus.ESTIMATED;
  }
}
