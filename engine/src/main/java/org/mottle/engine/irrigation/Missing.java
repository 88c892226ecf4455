package org.mottle.engine.irrigation;

import org.mottle.engine.survey.Refusal;

/**
 * A figure that could not be given.
 *
 * @param figure its name, as du_lq
 * @param refusal why, and what would change it
 */
public record Missing(String figure, Refusal refusal) {
  static Missing of(String figure, String reason, String remedy) {
    return new Missing(figure, new Refusal(reason, remedy));
  }

  @Override
  public String toString() {
    return figure + ": " + refusal;
  }
}
