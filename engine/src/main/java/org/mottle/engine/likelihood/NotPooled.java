package org.mottle.engine.likelihood;

/**
 * No variogram.
 *
 * @param reason what stands in the way
 * @param remedy what would change it
 */
public record NotPooled(String reason, String remedy) implements PooledOutcome {}
