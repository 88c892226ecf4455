package org.mottle.export.style;

/** A line. */
public record LineSymbol(Stroke stroke) implements Symbol {}
