package org.mottle.export.report;

import java.util.Locale;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.export.style.Ramp;

/**
 * A map of a green on its sheet, as SVG: to scale, north up, with a bar of metres and an arrow. All
 * maps of a green have one size. Each has an id of its own on the page.
 */
final class SheetMap {
  static final double WIDTH = 400;
  static final double HEIGHT = 370;
  private static final double MARGIN = 10;
  private static final double FOOT = 24;

  /** Parts smaller than this, px², have no letter. */
  private static final double LEAST_LETTER = 260;

  /** With more stations their values would cover the map. */
  private static final int MOST_VALUES = 30;

  /** Figures across the longest side of a raster. */
  private static final int FIGURES = 7;

  private final StringBuilder svg = new StringBuilder();
  private final String id;
  private final Geometry outline;
  private final Envelope box;
  private final double scale;
  private final double left;
  private final double top;

  SheetMap(String id, String title, Geometry outline) {
    this.id = id;
    this.outline = outline;
    this.box = outline.getEnvelopeInternal();
    this.scale =
        Math.min(
            (WIDTH - 2 * MARGIN) / box.getWidth(), (HEIGHT - 2 * MARGIN - FOOT) / box.getHeight());
    this.left = (WIDTH - box.getWidth() * scale) / 2;
    this.top = MARGIN + (HEIGHT - 2 * MARGIN - FOOT - box.getHeight() * scale) / 2;
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg class=\"sheet-map\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\">",
            WIDTH,
            HEIGHT,
            Markup.text(title)));
  }

  /** The zones with hatch and letter. */
  SheetMap zones(Iterable<Zone> zones) {
    StringBuilder letters = new StringBuilder();
    for (Zone zone : zones) {
      ClassLook look = ClassLook.of(zone.cls());
      path(zone.geometry(), "fill=\"" + look.paint() + "\" stroke=\"#555\" stroke-width=\".6\"");
      for (int i = 0; i < zone.geometry().getNumGeometries(); i++) {
        Geometry part = zone.geometry().getGeometryN(i);
        if (part.getArea() * scale * scale >= LEAST_LETTER) {
          Coordinate at = inside(part);
          letters.append(look.letterAt(px(at.x), py(at.y) + 5, 15));
        }
      }
    }
    outline();
    svg.append(letters);
    return this;
  }

  /** Where a letter stands best: the centre of the largest circle inside. */
  static Coordinate inside(Geometry part) {
    double tolerance = Math.max(0.05, Math.sqrt(part.getArea()) / 40);
    Point centre = new MaximumInscribedCircle(part, tolerance).getCenter();
    return centre.getCoordinate();
  }

  /** A raster cut to the outline, with figures over it so that it can be read without colour. */
  SheetMap raster(Raster raster, Ramp ramp) {
    CellGrid grid = raster.grid();
    svg.append("<clipPath id=\"").append(id).append("\">");
    path(outline, "");
    svg.append(
        String.format(
            Locale.ROOT,
            "</clipPath><image clip-path=\"url(#%s)\" x=\"%.2f\" y=\"%.2f\" width=\"%.2f\""
                + " height=\"%.2f\" preserveAspectRatio=\"none\""
                + " style=\"image-rendering:pixelated\" href=\"%s\"/>",
            id,
            px(grid.west()),
            py(grid.north()),
            (grid.east() - grid.west()) * scale,
            (grid.north() - grid.south()) * scale,
            RasterPicture.uri(raster, ramp)));
    outline();
    figures(raster);
    return this;
  }

  private void figures(Raster raster) {
    CellGrid grid = raster.grid();
    int step = Math.max(1, Math.max(grid.columns(), grid.rows()) / FIGURES);
    for (int row = step / 2; row < grid.rows(); row += step) {
      for (int column = step / 2; column < grid.columns(); column += step) {
        double value = raster.value(row, column);
        if (!Double.isNaN(value)) {
          svg.append(
              String.format(
                  Locale.ROOT,
                  "<text class=\"figure\" x=\"%.1f\" y=\"%.1f\">%.1f</text>",
                  px(grid.x(column)),
                  py(grid.y(row)) + 3,
                  value));
        }
      }
    }
  }

  SheetMap patch(Patch patch) {
    path(
        patch.geometry(),
        "fill=\"none\" stroke=\"#111\" stroke-width=\"2\" stroke-dasharray=\"6 3\"");
    Coordinate at = inside(patch.geometry());
    double offset = patch.areaM2() * scale * scale > 4 * LEAST_LETTER ? 20 : 0;
    badge(px(at.x) + offset, py(at.y), "" + patch.number());
    return this;
  }

  private void badge(double x, double y, String number) {
    svg.append(
        String.format(
            Locale.ROOT,
            "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"8.5\" fill=\"#111\"/><text x=\"%.1f\" y=\"%.1f\""
                + " class=\"badge\">%s</text>",
            x,
            y,
            x,
            y + 4,
            number));
  }

  /** A triangle: on its point for wet, on its base for dry. */
  SheetMap spot(Spot spot) {
    double x = px(spot.point().x);
    double y = py(spot.point().y);
    double turn = spot.kind() == ZoneClass.WET ? 1 : -1;
    svg.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fZ\" fill=\"#fff\" stroke=\"#111\""
                + " stroke-width=\"1.6\"/>",
            x,
            y + 8 * turn,
            x - 8,
            y - 6 * turn,
            x + 8,
            y - 6 * turn));
    return this;
  }

  SheetMap stations(Stations stations) {
    boolean values = stations.stations().size() <= MOST_VALUES;
    for (Stations.Station s : stations.stations()) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<circle class=\"station\" cx=\"%.1f\" cy=\"%.1f\" r=\"2.6\"/>",
              px(s.x()),
              py(s.y())));
      if (values) {
        svg.append(
            String.format(
                Locale.ROOT,
                "<text class=\"figure\" x=\"%.1f\" y=\"%.1f\">%.0f</text>",
                px(s.x()),
                py(s.y()) - 5,
                s.value()));
      }
    }
    return this;
  }

  private void outline() {
    path(outline, "fill=\"none\" stroke=\"#111\" stroke-width=\"1.6\"");
  }

  String done() {
    double metres = bar((WIDTH / 3) / scale);
    double y = HEIGHT - 8;
    svg.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fv-6v6h%.1fv-6\" fill=\"none\" stroke=\"#111\" stroke-width=\"1.4\"/>"
                + "<text class=\"foot\" x=\"%.1f\" y=\"%.1f\">%s m</text>",
            MARGIN,
            y,
            metres * scale,
            MARGIN + metres * scale + 6,
            y,
            metres < 1 ? "" + metres : String.format(Locale.ROOT, "%.0f", metres)));
    svg.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fl5 16l-5 -4l-5 4z\" fill=\"#111\"/><text class=\"foot\" x=\"%.1f\""
                + " y=\"%.1f\">N</text>",
            WIDTH - 14,
            HEIGHT - 24,
            WIDTH - 32,
            HEIGHT - 9));
    return svg + "</svg>";
  }

  /** The longest of 1, 2 and 5 times a power of ten that is not above a length. */
  static double bar(double longest) {
    double power = Math.pow(10, Math.floor(Math.log10(longest)));
    double[] steps = {5, 2, 1};
    for (double step : steps) {
      if (step * power <= longest) {
        return step * power;
      }
    }
    return power;
  }

  static SheetMap of(String id, String title, Outcome.Mapped map) {
    return new SheetMap(id, title, map.subject().green().outline());
  }

  private double px(double x) {
    return left + (x - box.getMinX()) * scale;
  }

  private double py(double y) {
    return top + (box.getMaxY() - y) * scale;
  }

  private void path(Geometry area, String look) {
    svg.append("<path clip-rule=\"evenodd\" fill-rule=\"evenodd\" ").append(look).append(" d=\"");
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
