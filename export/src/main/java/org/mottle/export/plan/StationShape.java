package org.mottle.export.plan;

import java.util.Locale;
import org.mottle.engine.survey.Reading.Role;

/**
 * How a station is drawn on the card: told by its shape, so that a black and white print says as
 * much as a coloured one. A second outline stands for more than one insertion.
 */
enum StationShape {
  CIRCLE("station"),
  SQUARE("close pair: partner of a station"),
  TRIANGLE("station between earlier ones"),
  DIAMOND("place of interest, not part of the mean"),
  CROSSED("control, read again and again");

  /** Half the size of a shape, mm. */
  static final double HALF_MM = 1.5;

  private final String meaning;

  StationShape(String meaning) {
    this.meaning = meaning;
  }

  static StationShape of(Role role) {
    return switch (role) {
      case PLAN -> CIRCLE;
      case PAIR -> SQUARE;
      case INFILL -> TRIANGLE;
      case POINT_OF_INTEREST -> DIAMOND;
      case CONTROL -> CROSSED;
    };
  }

  /** For the legend. */
  String meaning() {
    return meaning;
  }

  /** Elements of SVG round a place in mm of the drawing. */
  String svg(double x, double y, boolean more) {
    String outer = more && this != CROSSED ? outline(x, y, HALF_MM + 0.9, "none") : "";
    return outer + outline(x, y, HALF_MM, "#fff") + (this == CROSSED ? cross(x, y) : "");
  }

  private String outline(double x, double y, double half, String fill) {
    String style = " fill=\"" + fill + "\" stroke=\"#000\" stroke-width=\"0.35\"/>";
    return switch (this) {
      case SQUARE -> path(style, x, y, half * 0.9, 1, 1, -1, 1, -1, -1, 1, -1);
      case TRIANGLE -> path(style, x, y, half * 1.15, 0, -1.1, 1, 0.75, -1, 0.75);
      case DIAMOND -> path(style, x, y, half * 1.25, 0, -1, 1, 0, 0, 1, -1, 0);
      case CIRCLE, CROSSED ->
          String.format(
              Locale.ROOT,
              "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\"%s",
              x,
              y,
              this == CROSSED ? half * 1.3 : half,
              style);
    };
  }

  private static String path(String style, double x, double y, double half, double... corners) {
    StringBuilder points = new StringBuilder("<polygon points=\"");
    for (int i = 0; i < corners.length; i += 2) {
      points.append(
          String.format(
              Locale.ROOT, "%.2f,%.2f ", x + half * corners[i], y + half * corners[i + 1]));
    }
    return points.toString().strip() + '"' + style;
  }

  private static String cross(double x, double y) {
    double r = HALF_MM * 1.3;
    return String.format(
        Locale.ROOT,
        "<path d=\"M%.2f %.2fh%.2fM%.2f %.2fv%.2f\" stroke=\"#000\" stroke-width=\"0.5\"/>",
        x - r,
        y,
        2 * r,
        x,
        y - r,
        2 * r);
  }
}
