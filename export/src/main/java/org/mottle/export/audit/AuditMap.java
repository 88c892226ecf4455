package org.mottle.export.audit;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.mottle.engine.irrigation.AreaAudit;
import org.mottle.engine.irrigation.CatchCan;
import org.mottle.engine.irrigation.Head;
import org.mottle.engine.irrigation.HeadCoverage;
import org.mottle.engine.irrigation.Scheduling;
import org.mottle.export.report.Markup;

/** Maps of an audit as SVG: cans by the size of their catch, ground by the heads that reach it. */
final class AuditMap {
  private static final int MARGIN = 26;

  /** Radius of a can that caught the mean, pixels. */
  private static final double MEAN_RADIUS = 9;

  /** From no head to six and more. */
  private static final String[] SHADES = {
    "#ffffff", "#eef3f8", "#d3e2ef", "#b0cbe1", "#86aed0", "#5f92bf", "#3f78aa"
  };

  private final int side;
  private final Envelope box;
  private final double scale;
  private final StringBuilder svg = new StringBuilder();

  private AuditMap(int side, Envelope box, String label) {
    this.side = side;
    this.box = box;
    this.scale = (side - 2.0 * MARGIN) / Math.max(1, Math.max(box.getWidth(), box.getHeight()));
    add(
        "<svg width=\"%d\" height=\"%d\" role=\"img\" aria-label=\"%s\">",
        side, side, Markup.text(label));
  }

  /** Empty when no can has a place. */
  static Optional<String> cans(AreaAudit a, Audited audited, int side) {
    List<CatchCan> cans = a.area().cans();
    Envelope box = new Envelope();
    a.area().green().ifPresent(g -> box.expandToInclude(g.outline().getEnvelopeInternal()));
    cans.stream().filter(CatchCan::hasPlace).forEach(c -> box.expandToInclude(c.x(), c.y()));
    if (cans.stream().noneMatch(CatchCan::hasPlace)) {
      return Optional.empty();
    }
    a.area().heads().forEach(h -> box.expandToInclude(h.x(), h.y()));
    AuditMap map = new AuditMap(side, box, "cans of " + AuditReport.name(a));
    a.area().green().ifPresent(g -> map.area(g.outline(), "#f4f4ee", "#333"));
    a.area().heads().forEach(h -> map.head(h, true));
    a.scheduling().stream()
        .filter(s -> s.refusal().isEmpty() && s.share() == 0.05)
        .forEach(map::window);
    double[] values = a.values().values();
    double mean = Arrays.stream(values).average().orElse(Double.NaN);
    boolean[] low = AuditRows.lowest(a, audited);
    for (int i = 0; i < cans.size(); i++) {
      if (cans.get(i).hasPlace()) {
        map.can(cans.get(i), values.length == 0 ? Double.NaN : values[i], mean, low[i]);
      }
    }
    return Optional.of(map.end());
  }

  static String coverage(HeadCoverage coverage, int side) {
    Envelope box = new Envelope(coverage.green().outline().getEnvelopeInternal());
    coverage.spacing().forEach(s -> box.expandToInclude(s.head().x(), s.head().y()));
    AuditMap map = new AuditMap(side, box, "heads that reach " + coverage.green().id());
    for (HeadCoverage.Part part : coverage.parts()) {
      map.area(part.area(), SHADES[Math.min(part.count(), SHADES.length - 1)], "#888");
    }
    for (HeadCoverage.Part part : coverage.parts()) {
      MaximumInscribedCircle circle = new MaximumInscribedCircle(part.area(), 0.2);
      if (circle.getRadiusLine().getLength() * map.scale > 6) {
        Point at = circle.getCenter();
        map.text(map.x(at.getX()) - 3, map.y(at.getY()) + 4, String.valueOf(part.count()), 11);
      }
    }
    coverage.spacing().forEach(s -> map.head(s.head(), false));
    return map.end();
  }

  private void area(Geometry area, String fill, String stroke) {
    add("<path fill=\"%s\" stroke=\"%s\" fill-rule=\"evenodd\" d=\"", fill, stroke);
    Geometry boundary = area.getBoundary();
    for (int k = 0; k < boundary.getNumGeometries(); k++) {
      char step = 'M';
      for (Coordinate c : boundary.getGeometryN(k).getCoordinates()) {
        add("%s%.1f %.1f", step, x(c.x), y(c.y));
        step = 'L';
      }
      svg.append('Z');
    }
    svg.append("\"/>");
  }

  /** A triangle with its name; the two ends of the arc as short lines. */
  private void head(Head head, boolean named) {
    double x = x(head.x());
    double y = y(head.y());
    if (head.sweep() < 360) {
      for (double bearing : new double[] {head.arcFrom(), head.arcTo()}) {
        double rad = Math.toRadians(bearing);
        add(
            "<path stroke=\"#1f5a8a\" d=\"M%.1f %.1fL%.1f %.1f\"/>",
            x, y, x + 16 * Math.sin(rad), y - 16 * Math.cos(rad));
      }
    }
    add(
        "<path fill=\"#1f5a8a\" d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fZ\"/>",
        x, y - 6, x + 5, y + 4, x - 5, y + 4);
    text(x + (x > side / 2.0 ? -24 : 7), y + (named ? 14 : 12), head.id(), 10);
  }

  private void window(Scheduling s) {
    double half = s.sideM() / 2;
    add(
        "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"none\" stroke=\"#7a2e00\""
            + " stroke-dasharray=\"5 3\"/>",
        x(s.x() - half), y(s.y() + half), s.sideM() * scale, s.sideM() * scale);
  }

  /** Area as the catch; the lowest quarter is filled. */
  private void can(CatchCan can, double value, double mean, boolean low) {
    double x = x(can.x());
    double y = y(can.y());
    double radius = Double.isNaN(value) ? 2 : Math.max(1.5, MEAN_RADIUS * Math.sqrt(value / mean));
    add(
        "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\" stroke=\"#333\"><title>%s</title></circle>",
        x, y, radius, low ? "#d98d3f" : "#cfe3f2", Markup.text(can.id()));
    double shown = Double.isNaN(value) ? can.measure().ml() : value;
    String digits = shown < 20 ? "%.1f" : "%.0f";
    // beside a circle that is too small to hold it
    text(radius < 7 ? x + radius + 1 : x - 8, y + 4, String.format(Locale.ROOT, digits, shown), 10);
  }

  private void text(double x, double y, String text, int size) {
    add(
        "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%d\" stroke=\"#fff\" stroke-width=\"2\""
            + " paint-order=\"stroke\">%s</text>",
        x, y, size, Markup.text(text));
  }

  private String end() {
    double metres = box.getWidth() > 60 ? 20 : 5;
    double from = MARGIN;
    double at = side - 8.0;
    add("<path stroke=\"#333\" d=\"M%.1f %.1fL%.1f %.1f\"/>", from, at, from + metres * scale, at);
    text(from + metres * scale + 4, at + 3, String.format(Locale.ROOT, "%.0f m", metres), 10);
    add("<path fill=\"#333\" d=\"M%d 8L%d 20L%d 20Z\"/>", side - 14, side - 10, side - 18);
    text(side - 18.0, 31, "N", 10);
    return svg.append("</svg>").toString();
  }

  private double x(double east) {
    return MARGIN + (east - box.getMinX()) * scale;
  }

  private double y(double north) {
    return MARGIN + (box.getMaxY() - north) * scale;
  }

  private void add(String format, Object... values) {
    svg.append(String.format(Locale.ROOT, format, values));
  }
}
