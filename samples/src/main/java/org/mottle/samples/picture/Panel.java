package org.mottle.samples.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.linearref.LengthIndexedLine;

/** Draws one green into a frame: zones, lines, stations, and words above and below. */
final class Panel {
  static final Color INK = new Color(0x222222);
  private static final Color LINE = new Color(0x444444);
  private static final double DOT = 3.2;

  private final Graphics2D g;
  private final GreenMap map;
  private final Ground ground;
  private final Labels labels;

  Panel(Graphics2D g, GreenMap map, Rectangle frame, double pixelsPerM) {
    this.g = g;
    this.map = map;
    this.ground = Ground.of(map.outline(), frame, pixelsPerM);
    this.labels = new Labels(g);
  }

  void draw() {
    for (GreenMap.Zone zone : map.zones()) {
      zone.style().paint(g, ground.shape(zone.geometry()));
    }
    g.setColor(LINE);
    for (GreenMap.Line line : map.lines()) {
      g.setStroke(new BasicStroke(isLimit(line.pct()) ? 2.4f : 1f));
      g.draw(ground.shape(line.geometry()));
    }
    g.setColor(INK);
    g.setStroke(new BasicStroke(2.2f));
    g.draw(ground.shape(map.outline()));
    dots();
    values();
    parts();
    levels();
    words();
  }

  private boolean isLimit(double pct) {
    return pct == map.title().lowPct() || pct == map.title().highPct();
  }

  private void dots() {
    for (GreenMap.Station s : map.stations()) {
      Point2D p = ground.pixel(s.x(), s.y());
      g.setColor(Color.WHITE);
      g.fill(dot(p, DOT + 1.4));
      g.setColor(INK);
      g.fill(dot(p, DOT));
      labels.keepFree(p.getX(), p.getY(), DOT + 1.5);
    }
  }

  private static Ellipse2D dot(Point2D p, double radius) {
    return new Ellipse2D.Double(p.getX() - radius, p.getY() - radius, 2 * radius, 2 * radius);
  }

  private void values() {
    Font font = new Font(Font.SANS_SERIF, Font.BOLD, 13);
    for (GreenMap.Station s : map.stations()) {
      Point2D p = ground.pixel(s.x(), s.y());
      List<Point2D> round = new ArrayList<>();
      for (double[] d :
          new double[][] {{0, -13}, {0, 13}, {23, 0}, {-23, 0}, {20, -11}, {-20, -11}, {20, 11}}) {
        round.add(new Point2D.Double(p.getX() + d[0], p.getY() + d[1]));
      }
      labels.write(number("%.1f", s.pct()), font, INK, round);
    }
  }

  /** Each part of the dry and wet zones is named where it has room, with its area. */
  private void parts() {
    Font font = new Font(Font.SANS_SERIF, Font.BOLD, 15);
    for (GreenMap.Zone zone : map.zones()) {
      if (zone.style() == ZoneStyle.IN_BAND) {
        continue;
      }
      for (Geometry part : parts(zone.geometry())) {
        String name = number(zone.style().code() + " %.0f m²", part.getArea());
        labels.write(name, font, zone.style().ink().darker(), inside(part));
      }
    }
  }

  /** Places 1 m apart inside a part, those farthest from its edge first. */
  private List<Point2D> inside(Geometry part) {
    Envelope extent = part.getEnvelopeInternal();
    List<Coordinate> places = new ArrayList<>();
    for (double y = extent.getMinY() + 0.5; y < extent.getMaxY(); y++) {
      for (double x = extent.getMinX() + 0.5; x < extent.getMaxX(); x++) {
        places.add(new Coordinate(x, y));
      }
    }
    return places.stream()
        .map(part.getFactory()::createPoint)
        .filter(part::contains)
        .sorted(Comparator.comparingDouble(p -> -p.distance(part.getBoundary())))
        .map(p -> ground.pixel(p.getX(), p.getY()))
        .toList();
  }

  /** Each part of a line bears its level, at the first place along it that has room. */
  private void levels() {
    Font plain = new Font(Font.SANS_SERIF, Font.ITALIC, 12);
    Font bold = new Font(Font.SANS_SERIF, Font.BOLD | Font.ITALIC, 13);
    for (GreenMap.Line line : map.lines()) {
      for (Geometry part : parts(line.geometry())) {
        LengthIndexedLine along = new LengthIndexedLine(part);
        List<Point2D> places = new ArrayList<>();
        for (int step = 0; step < 40; step++) {
          double share = (0.5 + step * 0.381966) % 1; // the golden section spreads the places
          if (share > 0.06 && share < 0.94) {
            Coordinate c = along.extractPoint(share * along.getEndIndex());
            places.add(ground.pixel(c.x, c.y));
          }
        }
        Font font = isLimit(line.pct()) ? bold : plain;
        labels.write(number("%.0f", line.pct()), font, LINE, places);
      }
    }
  }

  private static List<Geometry> parts(Geometry whole) {
    return IntStream.range(0, whole.getNumGeometries()).mapToObj(whole::getGeometryN).toList();
  }

  private void words() {
    Rectangle frame = ground.frame();
    GreenMap.Title t = map.title();
    int y = frame.y - 32;
    text(Font.BOLD, 20, frame.x, y, "Green %s, survey %s, %s", t.green(), t.survey(), t.date());
    text(
        Font.PLAIN,
        14,
        frame.x,
        y + 22,
        "%d stations; band for %s %.0f–%.0f %% VWC; median SD of the map %.1f %% VWC",
        map.stations().size(),
        t.purpose(),
        t.lowPct(),
        t.highPct(),
        map.medianSd());
    int line = frame.y + frame.height + 18;
    for (GreenMap.Zone zone : map.zones()) {
      text(
          Font.PLAIN,
          14,
          frame.x,
          line,
          "%s: %.0f m² (%.0f %%), mean %.1f %% VWC, SD of that mean %.1f %% VWC",
          zone.style().code(),
          zone.areaM2(),
          100 * zone.areaM2() / map.outline().getArea(),
          zone.mean(),
          zone.sd());
      line += 20;
    }
  }

  private void text(int style, int size, int x, int y, String format, Object... values) {
    g.setFont(new Font(Font.SANS_SERIF, style, size));
    g.setColor(INK);
    g.drawString(String.format(Locale.ROOT, format, values), x, y);
  }

  private static String number(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }
}
