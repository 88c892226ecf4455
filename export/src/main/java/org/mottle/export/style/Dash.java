package org.mottle.export.style;

/** How a line is broken. */
public enum Dash {
  SOLID("solid", ""),
  DASHED("dash", "6 3"),
  DOTTED("dot", "1.5 2.5");

  private final String qgis;
  private final String sldLengths;

  Dash(String qgis, String sldLengths) {
    this.qgis = qgis;
    this.sldLengths = sldLengths;
  }

  /** Pen style as QGIS names it. */
  String qgis() {
    return qgis;
  }

  /** Dash and gap, pixels; empty of a solid line. */
  String sldLengths() {
    return sldLengths;
  }
}
