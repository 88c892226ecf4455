package org.mottle.engine.fit;

/**
 * No model could be had.
 *
 * @param reason why not, and what would help, in words
 */
public record NotFitted(String reason) implements FitOutcome {}
