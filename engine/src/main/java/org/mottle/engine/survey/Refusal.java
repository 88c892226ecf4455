package org.mottle.engine.survey;

/**
 * Why something was not done, in words a user can act on.
 *
 * @param reason what stands in the way, with the value
 * @param remedy what would change it
 */
public record Refusal(String reason, String remedy) {
  @Override
  public String toString() {
    return remedy.isEmpty() ? reason : reason + "; " + remedy;
  }
}
