package org.mottle.engine.review;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.SharedError;

/**
 * One green in one survey after the review.
 *
 * @param visit with its readings adjusted and each one's finding and status set
 * @param findings about this visit
 * @param errors that its readings have in common
 * @param grade how far it can be trusted
 * @param obstacle why it must not be mapped, if that was found
 */
public record ReviewedVisit(
    GreenVisit visit,
    List<Finding> findings,
    List<SharedError> errors,
    Grade grade,
    Optional<Refusal> obstacle) {
  public ReviewedVisit {
    findings = List.copyOf(findings);
    errors = List.copyOf(errors);
  }
}
