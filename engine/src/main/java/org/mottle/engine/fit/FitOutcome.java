package org.mottle.engine.fit;

/** What became of a fit: a model, or the reason why there is none. */
public sealed interface FitOutcome permits Fitted, NotFitted {}
