package org.mottle.export.style;

/**
 * One class of a legend.
 *
 * @param label as the legend has it
 * @param condition which features
 * @param symbol how they are drawn
 */
public record Rule(String label, Condition condition, Symbol symbol) {}
