package org.mottle.engine.population;

import java.util.List;
import org.mottle.engine.survey.Refusal;

/**
 * Two populations are not shown: the readings are to be taken as one. That is no proof that there
 * is only one.
 *
 * @param evidence the figures
 * @param failures the rules that failed, at least one
 * @param why the same in words, with what would change it
 */
public record CannotTell(Evidence evidence, List<Failure> failures, Refusal why)
    implements PopulationOutcome {

  /** The rules, in the order in which they are held. */
  public enum Rule {
    /** Too few stations. */
    STATIONS,
    /** The values do not spread within the populations, as if made up or stuck. */
    SPREAD,
    /** One normal population explains the readings about as well. */
    DELTA_BIC,
    /** The two means are too near to one another. */
    SEPARATION,
    /** The smaller population is a reading or two that may be mistakes. */
    SHARE
  }

  /**
   * @param rule which rule failed
   * @param figure what was found
   * @param limit what it should have reached
   */
  public record Failure(Rule rule, double figure, double limit) {}

  public CannotTell {
    failures = List.copyOf(failures);
    if (failures.isEmpty()) {
      throw new IllegalArgumentException("cannot tell needs a rule that failed, had " + failures);
    }
  }
}
