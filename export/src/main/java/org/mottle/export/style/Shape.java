package org.mottle.export.style;

/** Outline of a point's symbol: one shape a class, so that it can be told without colour. */
public enum Shape {
  CIRCLE("circle", 0, "circle", 0),
  SQUARE("square", 0, "square", 0),
  DIAMOND("diamond", 0, "square", 45),
  TRIANGLE("triangle", 0, "triangle", 0),
  /** Standing on its tip. */
  TIP("triangle", 180, "triangle", 180),
  STAR("star", 0, "star", 0),
  /** Upright cross, of lines. */
  CROSS("cross", 0, "cross", 0),
  /** Slanting cross, of lines. */
  X("cross2", 0, "x", 0);

  private final String qgis;
  private final int qgisDegrees;
  private final String sld;
  private final int sldDegrees;

  Shape(String qgis, int qgisDegrees, String sld, int sldDegrees) {
    this.qgis = qgis;
    this.qgisDegrees = qgisDegrees;
    this.sld = sld;
    this.sldDegrees = sldDegrees;
  }

  String qgis() {
    return qgis;
  }

  /** Clockwise. */
  int qgisDegrees() {
    return qgisDegrees;
  }

  /** One of the well-known names of OGC 02-070, 11.3.2. */
  String sld() {
    return sld;
  }

  /** Clockwise. */
  int sldDegrees() {
    return sldDegrees;
  }
}
