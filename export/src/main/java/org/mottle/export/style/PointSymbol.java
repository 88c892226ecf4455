package org.mottle.export.style;

import org.mottle.engine.check.Check;

/**
 * A point's symbol.
 *
 * @param shape its outline
 * @param colour of its inside, 0xrrggbb; crosses have none
 * @param sizeMm across, mm, above 0
 * @param outline drawn round it
 */
public record PointSymbol(Shape shape, int colour, double sizeMm, Stroke outline)
    implements Symbol {
  public PointSymbol {
    Check.above("size of a symbol", sizeMm, 0, "mm");
  }
}
