package org.mottle.engine.population;

/** What the readings say of one population or two. */
public sealed interface PopulationOutcome permits TwoFound, CannotTell {

  /** The figures the rules were held against. */
  Evidence evidence();
}
