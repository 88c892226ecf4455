package org.mottle.engine.season;

import java.util.Optional;
import org.mottle.engine.survey.Refusal;

/**
 * What was asked for, or why it cannot be told: one of the two.
 *
 * @param value empty where refused
 * @param refusal empty where told
 */
public record Answer<T>(Optional<T> value, Optional<Refusal> refusal) {
  public Answer {
    if (value.isPresent() == refusal.isPresent()) {
      throw new IllegalArgumentException("an answer is either a value or a refusal");
    }
  }

  static <T> Answer<T> of(T value) {
    return new Answer<>(Optional.of(value), Optional.empty());
  }

  public static <T> Answer<T> refused(Refusal why) {
    return new Answer<>(Optional.empty(), Optional.of(why));
  }

  static <T> Answer<T> refused(String reason, String remedy) {
    return refused(new Refusal(reason, remedy));
  }
}
