package org.mottle.engine.kriging;

/**
 * Generalised least squares coefficient of one term of the drift, in the plain units of the term.
 *
 * @param term "1", "x", "y" or "covariate 1", ...
 * @param value estimate
 * @param standardError its standard error under the model
 */
public record TrendCoefficient(String term, double value, double standardError) {}
