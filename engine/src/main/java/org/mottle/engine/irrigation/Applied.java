package org.mottle.engine.irrigation;

/**
 * Water applied on the average of the cans; NaN where it cannot be told.
 *
 * @param depthMm depth of the run, mm
 * @param minutes of the run, min; NaN when the cans differ
 * @param rateMmH mm/h
 * @param windMs highest wind recorded, m/s
 */
public record Applied(double depthMm, double minutes, double rateMmH, double windMs) {}
