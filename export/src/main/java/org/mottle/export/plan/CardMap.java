package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Reading.Role;
import org.mottle.export.report.Markup;

/**
 * The drawing of a card: outline with its holes, the inset, the walk with arrow heads, stations by
 * shape and number, scale bar and north. Grid north is up. SVG in mm, one size, no scripts.
 */
final class CardMap {
  private static final double MARGIN_MM = 5;
  private static final double STRIP_MM = 9;
  private static final double SHORTEST_ARROW_MM = 7;
  private static final double[] BARS_M = {0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500};

  private final GreenPlan plan;
  private final double wide;
  private final double high;
  private final double mmPerM;
  private final Coordinate middle;
  private final StringBuilder svg = new StringBuilder(8192);

  private CardMap(GreenPlan plan, double wide, double high) {
    this.plan = plan;
    this.wide = wide;
    this.high = high;
    Envelope ground = ground(plan);
    this.middle = ground.centre();
    this.mmPerM =
        Math.min(
            (wide - 2 * MARGIN_MM) / Math.max(ground.getWidth(), 1),
            (high - STRIP_MM - 2 * MARGIN_MM) / Math.max(ground.getHeight(), 1));
  }

  private static Envelope ground(GreenPlan plan) {
    Envelope ground = plan.green().outline().getEnvelopeInternal().copy();
    plan.plan().stations().forEach(s -> ground.expandToInclude(s.x(), s.y()));
    return ground;
  }

  /** Height of a drawing that the ground fills from side to side, mm. */
  static double heightFor(GreenPlan plan, double wide) {
    Envelope ground = ground(plan);
    double scale = (wide - 2 * MARGIN_MM) / Math.max(ground.getWidth(), 1);
    return ground.getHeight() * scale + 2 * MARGIN_MM + STRIP_MM;
  }

  /**
   * @param wide of the drawing, mm
   * @param high of the drawing, mm
   */
  static String svg(GreenPlan plan, double wide, double high) {
    return new CardMap(plan, wide, high).draw();
  }

  private String draw() {
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0fmm\" height=\"%.0fmm\""
            + " viewBox=\"0 0 %.0f %.0f\" role=\"img\" font-family=\"sans-serif\">",
        wide, high, wide, high);
    svg.append("<title>stations of green ");
    svg.append(Markup.text(plan.label())).append("</title>");
    outline();
    walk();
    stations();
    scaleBar();
    north();
    return svg.append("</svg>").toString();
  }

  private double x(double east) {
    return wide / 2 + (east - middle.x) * mmPerM;
  }

  private double y(double north) {
    return (high - STRIP_MM) / 2 - (north - middle.y) * mmPerM;
  }

  private void outline() {
    Geometry green = plan.green().outline();
    shape(green, "#f3f5ef", "stroke=\"#000\" stroke-width=\"0.6\"");
    Geometry inner =
        plan.insetM() > 0 ? green.buffer(-plan.insetM()) : green.getFactory().createPolygon();
    if (!inner.isEmpty()) {
      shape(inner, "none", "stroke=\"#555\" stroke-width=\"0.25\" stroke-dasharray=\"0.4 1.2\"");
    }
  }

  private void shape(Geometry areas, String fill, String stroke) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < areas.getNumGeometries(); i++) {
      Polygon part = (Polygon) areas.getGeometryN(i);
      ring(path, part.getExteriorRing().getCoordinates());
      for (int h = 0; h < part.getNumInteriorRing(); h++) {
        ring(path, part.getInteriorRingN(h).getCoordinates());
      }
    }
    add("<path d=\"%s\" fill=\"%s\" fill-rule=\"evenodd\" %s/>", path, fill, stroke);
  }

  private void ring(StringBuilder path, Coordinate[] ring) {
    for (int i = 0; i < ring.length - 1; i++) {
      path.append(
          String.format(
              Locale.ROOT, "%s%.2f %.2f", i == 0 ? "M" : "L", x(ring[i].x), y(ring[i].y)));
    }
    path.append('Z');
  }

  private List<Coordinate> places() {
    List<Coordinate> places = new ArrayList<>();
    plan.plan().stations().forEach(s -> places.add(new Coordinate(x(s.x()), y(s.y()))));
    return places;
  }

  private void walk() {
    List<Coordinate> places = places();
    if (places.size() < 2) {
      return;
    }
    svg.append("<polyline fill=\"none\" stroke=\"#000\" stroke-width=\"0.3\" points=\"");
    places.forEach(p -> add("%.2f,%.2f ", p.x, p.y));
    svg.append("\"/>");
    for (int i = 1; i < places.size(); i++) {
      arrow(places.get(i - 1), places.get(i));
    }
  }

  /** An open arrow head in the middle of a leg that is long enough for one. */
  private void arrow(Coordinate from, Coordinate to) {
    double length = from.distance(to);
    if (length < SHORTEST_ARROW_MM) {
      return;
    }
    double along = Math.toDegrees(Math.atan2(to.y - from.y, to.x - from.x));
    add(
        "<path transform=\"translate(%.2f %.2f) rotate(%.1f)\" d=\"M-0.9 -0.9L0.6 0L-0.9 0.9\""
            + " fill=\"none\" stroke=\"#000\" stroke-width=\"0.35\"/>",
        (from.x + to.x) / 2, (from.y + to.y) / 2, along);
  }

  private void stations() {
    List<Coordinate> places = places();
    List<PlannedStation> stations = plan.plan().stations();
    List<Double> halves = new ArrayList<>();
    for (int i = stations.size() - 1; i >= 0; i--) { // the first on top
      PlannedStation s = stations.get(i);
      svg.append(
          StationShape.of(s.role()).svg(places.get(i).x, places.get(i).y, s.insertions() > 1));
    }
    for (PlannedStation s : stations) {
      boolean wider = s.insertions() > 1 || s.role() == Role.CONTROL;
      halves.add(StationShape.HALF_MM + (wider ? 0.9 : 0));
    }
    List<String> ids = stations.stream().map(PlannedStation::id).toList();
    Envelope sheet = new Envelope(0, wide, 0, high - STRIP_MM);
    List<Envelope> boxes = new NumberPlaces(places, halves, ids, sheet).find();
    for (int i = 0; i < boxes.size(); i++) {
      Coordinate at = boxes.get(i).centre();
      add(
          "<text x=\"%.2f\" y=\"%.2f\" font-size=\"3.1\" font-weight=\"bold\""
              + " text-anchor=\"middle\" stroke=\"#fff\" stroke-width=\"0.6\""
              + " paint-order=\"stroke\">%s</text>",
          at.x, at.y + 1.1, Markup.text(ids.get(i)));
    }
  }

  private void scaleBar() {
    double bar = BARS_M[0];
    for (double candidate : BARS_M) {
      bar = candidate * mmPerM <= wide / 3 ? candidate : bar;
    }
    double length = bar * mmPerM;
    double top = high - 5;
    add(
        "<path d=\"M%.2f %.2fv2h%.2fv-2M%.2f %.2fv1\" fill=\"none\" stroke=\"#000\""
            + " stroke-width=\"0.4\"/>",
        MARGIN_MM, top, length, MARGIN_MM + length / 2, top + 1);
    add(
        "<text x=\"%.2f\" y=\"%.2f\" font-size=\"3\">%s m</text>",
        MARGIN_MM + length + 1.5,
        top + 2,
        bar == Math.rint(bar) ? String.format(Locale.ROOT, "%.0f", bar) : "0.5");
  }

  private void north() {
    double x = wide - MARGIN_MM - 3;
    add(
        "<path d=\"M%.2f %.2fl2 7l-2 -1.6l-2 1.6z\" fill=\"#000\"/>"
            + "<text x=\"%.2f\" y=\"%.2f\" font-size=\"3\">N</text>",
        x, high - 8.5, x - 5.5, high - 3);
  }

  private void add(String format, Object... values) {
    svg.append(String.format(Locale.ROOT, format, values));
  }
}
