package org.mottle.export.style;

import org.mottle.engine.check.Check;

/**
 * An area: colour, pattern, outline.
 *
 * @param colour of the fill and the pattern's ground, 0xrrggbb
 * @param opacity of the fill, 0 (none) to 1
 * @param hatch pattern over the fill
 * @param hatchColour 0xrrggbb
 * @param outline drawn over both
 */
public record AreaSymbol(int colour, double opacity, Hatch hatch, int hatchColour, Stroke outline)
    implements Symbol {
  public AreaSymbol {
    Check.within("opacity of a fill", opacity, 0, 1, "");
  }

  /** Nothing but the outline. */
  static AreaSymbol outlined(Stroke outline) {
    return new AreaSymbol(0xffffff, 0, Hatch.NONE, 0, outline);
  }
}
