package org.mottle.export.style;

/** How a feature is drawn. */
public sealed interface Symbol permits AreaSymbol, LineSymbol, PointSymbol {}
