package org.mottle.export.style;

import org.mottle.engine.check.Check;

/**
 * A drawn line.
 *
 * @param colour 0xrrggbb
 * @param widthMm width on paper or screen, mm, above 0
 * @param dash how it is broken
 */
public record Stroke(int colour, double widthMm, Dash dash) {
  public Stroke {
    Check.above("width of a line", widthMm, 0, "mm");
  }

  static Stroke solid(int colour, double widthMm) {
    return new Stroke(colour, widthMm, Dash.SOLID);
  }
}
