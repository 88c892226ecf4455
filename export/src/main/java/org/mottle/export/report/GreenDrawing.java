package org.mottle.export.report;

import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * A green drawn to scale, north up, with a bar of ten metres: black lines, patches hatched, places
 * as numbers. Prints without colour. Each drawing of a page has a name of its own, since its hatch
 * has.
 */
final class GreenDrawing {
  private static final double MARGIN = 12;
  private static final double FOOT = 18;
  private static final double BAR_M = 10;

  private final StringBuilder svg = new StringBuilder();
  private final Envelope box;
  private final double scale;
  private final String hatch;

  /**
   * @param id unique on the page, of letters and digits
   * @param title read out by a screen reader
   * @param outline of the green, m
   * @param side longest side of the drawing, px
   */
  GreenDrawing(String id, String title, Geometry outline, double side) {
    this.box = outline.getEnvelopeInternal();
    this.scale = (side - 2 * MARGIN) / Math.max(box.getWidth(), box.getHeight());
    this.hatch = "hatch-" + id;
    double width = Math.max(box.getWidth(), BAR_M) * scale + 2 * MARGIN;
    double height = box.getHeight() * scale + 2 * MARGIN + FOOT;
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg width=\"%.0f\" height=\"%.0f\" viewBox=\"0 0 %.0f %.0f\" role=\"img\""
                + " aria-label=\"%s\"><defs><pattern id=\"%s\" width=\"6\" height=\"6\""
                + " patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><line x1=\"0\""
                + " y1=\"0\" x2=\"0\" y2=\"6\" stroke=\"#555\" stroke-width=\"1.2\"/></pattern></defs>",
            width,
            height,
            width,
            height,
            Markup.text(title),
            hatch));
    path(outline, "fill=\"#fbfbf6\" stroke=\"#1c1c1c\" stroke-width=\"1.5\"");
    foot(height);
  }

  private void foot(double height) {
    double y = height - 9;
    svg.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fv5h%.1fv-5\" fill=\"none\" stroke=\"#1c1c1c\"/><text x=\"%.1f\""
                + " y=\"%.1f\" font-size=\"11\">10 m; north is up</text>",
            MARGIN,
            y - 5,
            BAR_M * scale,
            MARGIN + BAR_M * scale + 6,
            y));
  }

  GreenDrawing patch(Polygon patch) {
    path(patch, "fill=\"url(#" + hatch + ")\" stroke=\"#1c1c1c\" stroke-dasharray=\"4 2\"");
    return this;
  }

  /** A number in a circle. */
  GreenDrawing place(double x, double y, int number) {
    svg.append(
        String.format(
            Locale.ROOT,
            "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"9\" fill=\"#fff\" stroke=\"#1c1c1c\"/><text x=\"%.1f\""
                + " y=\"%.1f\" font-size=\"11\" text-anchor=\"middle\">%d</text>",
            px(x),
            py(y),
            px(x),
            py(y) + 4,
            number));
    return this;
  }

  String done() {
    return svg + "</svg>\n";
  }

  private double px(double x) {
    return MARGIN + (x - box.getMinX()) * scale;
  }

  private double py(double y) {
    return MARGIN + (box.getMaxY() - y) * scale;
  }

  private void path(Geometry area, String look) {
    svg.append("<path fill-rule=\"evenodd\" ").append(look).append(" d=\"");
    for (int g = 0; g < area.getNumGeometries(); g++) {
      Geometry boundary = area.getGeometryN(g).getBoundary();
      for (int k = 0; k < boundary.getNumGeometries(); k++) {
        char step = 'M';
        for (Coordinate c : boundary.getGeometryN(k).getCoordinates()) {
          svg.append(step).append(String.format(Locale.ROOT, "%.1f %.1f", px(c.x), py(c.y)));
          step = 'L';
        }
        svg.append('Z');
      }
    }
    svg.append("\"/>");
  }
}
