package org.mottle.export.style;

import java.util.List;

/**
 * How a raster of one band is drawn: colours over a fixed scale, or a colour a class number.
 *
 * @param classes from the lowest
 * @param numbered whether cells hold the numbers of the classes, else values up to {@code to}
 */
public record RasterStyle(List<Step> classes, boolean numbered) {

  /**
   * One class.
   *
   * @param to number of the class, or the upper end of its values, which belongs to it; infinite
   *     for the last
   * @param colour 0xrrggbb
   * @param label as the legend has it
   */
  public record Step(double to, int colour, String label) {}

  public RasterStyle {
    classes = List.copyOf(classes);
  }
}
