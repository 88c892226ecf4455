package org.mottle.engine.likelihood;

/** What came of pooling. */
public sealed interface PooledOutcome permits PooledVariogram, NotPooled {}
