package org.mottle.export.style;

/** A pattern over or instead of a colour, so that a class can be told without colour. */
public enum Hatch {
  NONE(0, ""),
  /** Lines from lower left to upper right. */
  RISING(45, "shape://slash"),
  /** Lines from upper left to lower right. */
  FALLING(135, "shape://backslash"),
  LEVEL(0, "shape://horline"),
  UPRIGHT(90, "shape://vertline"),
  CROSSED(45, "shape://times"),
  DOTS(0, "circle");

  private final int degrees;
  private final String mark;

  Hatch(int degrees, String mark) {
    this.degrees = degrees;
    this.mark = mark;
  }

  /** Direction of its lines, counter-clockwise from east. */
  int degrees() {
    return degrees;
  }

  /** Mark of SLD that is repeated; lines by the names most servers share. */
  String mark() {
    return mark;
  }
}
