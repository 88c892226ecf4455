package org.mottle.export.drawings;

import java.util.List;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.mottle.export.write.FixedDecimals;

/**
 * A drawing as ASCII DXF of the release R12 (AC1009), which any program that reads DXF reads:
 * POINT, POLYLINE with VERTEX and SEQEND, TEXT. Units are metres. A polygon is one closed polyline
 * a ring: its shell runs anticlockwise, its holes clockwise, so that the signed areas of a layer's
 * rings add up to its area. A line of known height carries it as its elevation. Letters beyond
 * ASCII are written as {@code \U+XXXX}. Coordinates have 8 decimals, so that areas keep theirs.
 */
final class DxfDrawing {
  private static final int DECIMALS = 8;
  private static final double TEXT_M = 0.5;

  private final StringBuilder text = new StringBuilder(1 << 16);
  private final UnaryOperator<Coordinate> place;
  private final Envelope extent = new Envelope();

  private DxfDrawing(UnaryOperator<Coordinate> place) {
    this.place = place;
  }

  /**
   * @param shapes in the order of drawing
   * @param place from the working CRS to the grid of the drawing
   * @param remarks for the head of the file
   */
  static String text(List<Shape> shapes, UnaryOperator<Coordinate> place, List<String> remarks) {
    DxfDrawing entities = new DxfDrawing(place);
    entities.section("ENTITIES");
    shapes.forEach(entities::draw);
    entities.group(0, "ENDSEC").group(0, "EOF");
    // its corners are places of the drawing already
    DxfDrawing head = new DxfDrawing(UnaryOperator.identity());
    remarks.forEach(remark -> head.group(999, plain(remark)));
    head.head(entities.extent);
    head.tables(shapes);
    return head.text.append(entities.text).toString();
  }

  private void head(Envelope box) {
    section("HEADER");
    group(9, "$ACADVER").group(1, "AC1009");
    group(9, "$EXTMIN").point(10, box.isNull() ? new Coordinate() : corner(box, true), 0);
    group(9, "$EXTMAX").point(10, box.isNull() ? new Coordinate() : corner(box, false), 0);
    // points as crosses of half a metre
    group(9, "$PDMODE").group(70, "2");
    group(9, "$PDSIZE").group(40, "0.5");
    group(0, "ENDSEC");
  }

  private static Coordinate corner(Envelope box, boolean low) {
    return low
        ? new Coordinate(box.getMinX(), box.getMinY())
        : new Coordinate(box.getMaxX(), box.getMaxY());
  }

  private void tables(List<Shape> shapes) {
    section("TABLES");
    group(0, "TABLE").group(2, "LTYPE").group(70, "1");
    group(0, "LTYPE").group(2, "CONTINUOUS").group(70, "64").group(3, "Solid line");
    group(72, "65").group(73, "0").group(40, "0.0").group(0, "ENDTAB");
    TreeSet<CadLayer> used = new TreeSet<>();
    shapes.forEach(shape -> used.add(shape.layer()));
    group(0, "TABLE").group(2, "LAYER").group(70, String.valueOf(1 + 2 * used.size()));
    layer("0", 7);
    for (CadLayer layer : used) {
      layer(layer.name(), layer.colour());
      layer(layer.name() + "_TEXT", layer.colour());
    }
    group(0, "ENDTAB");
    group(0, "TABLE").group(2, "STYLE").group(70, "1");
    group(0, "STYLE").group(2, "STANDARD").group(70, "0").group(40, "0.0").group(41, "1.0");
    group(50, "0.0").group(71, "0").group(42, "0.5").group(3, "txt").group(4, "");
    group(0, "ENDTAB").group(0, "ENDSEC");
  }

  private void layer(String name, int colour) {
    group(0, "LAYER").group(2, name).group(70, "0").group(62, String.valueOf(colour));
    group(6, "CONTINUOUS");
  }

  private void draw(Shape shape) {
    for (int i = 0; i < shape.geometry().getNumGeometries(); i++) {
      Geometry part = shape.geometry().getGeometryN(i);
      if (part instanceof Polygon polygon) {
        ring(shape, polygon.getExteriorRing().getCoordinates(), true);
        for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
          ring(shape, polygon.getInteriorRingN(hole).getCoordinates(), false);
        }
      } else if (part instanceof LineString line) {
        boolean closed = line.isClosed() && line.getNumPoints() > 3;
        Coordinate[] all = line.getCoordinates();
        polyline(shape, all, closed ? all.length - 1 : all.length, closed, false);
      } else if (part instanceof Point point) {
        group(0, "POINT").group(8, shape.layer().name());
        point(10, point.getCoordinate(), height(shape));
      }
    }
    label(shape);
  }

  private void ring(Shape shape, Coordinate[] ring, boolean shell) {
    polyline(shape, ring, ring.length - 1, true, Orientation.isCCW(ring) != shell);
  }

  private void polyline(
      Shape shape, Coordinate[] places, int count, boolean closed, boolean reversed) {
    double z = height(shape);
    String layer = shape.layer().name();
    group(0, "POLYLINE").group(8, layer).group(66, "1");
    group(10, "0.0").group(20, "0.0").group(30, number(z)).group(70, closed ? "1" : "0");
    for (int i = 0; i < count; i++) {
      group(0, "VERTEX").group(8, layer);
      point(10, places[reversed ? count - 1 - i : i], z);
    }
    group(0, "SEQEND").group(8, layer);
  }

  private void label(Shape shape) {
    if (shape.label().isBlank()) {
      return;
    }
    Geometry geometry = shape.geometry();
    Coordinate at =
        geometry.getDimension() == 2
            ? geometry.getInteriorPoint().getCoordinate()
            : geometry.getCoordinates()[geometry.getNumPoints() / 2];
    group(0, "TEXT").group(8, shape.layer() + "_TEXT");
    point(10, at, height(shape));
    group(40, number(TEXT_M)).group(1, escaped(shape.label()));
  }

  private static double height(Shape shape) {
    return Double.isNaN(shape.z()) ? 0 : shape.z();
  }

  private void point(int code, Coordinate at, double z) {
    Coordinate to = place.apply(at);
    extent.expandToInclude(to);
    group(code, number(to.x)).group(code + 10, number(to.y)).group(code + 20, number(z));
  }

  private DxfDrawing section(String name) {
    return group(0, "SECTION").group(2, name);
  }

  private DxfDrawing group(int code, String value) {
    text.append(code).append('\n').append(value).append('\n');
    return this;
  }

  private static String number(double value) {
    String digits = FixedDecimals.text(value, DECIMALS);
    return digits.indexOf('.') < 0 ? digits + ".0" : digits;
  }

  /** ASCII on one line, for remarks. */
  private static String plain(String words) {
    return words.replaceAll("[^\\x20-\\x7E]+", "?");
  }

  /** As a drawing shows it: control signs are blanks, what would be a code is not one. */
  static String escaped(String words) {
    StringBuilder escaped = new StringBuilder();
    for (int i = 0; i < words.length(); i++) {
      char letter = words.charAt(i);
      if (letter < ' ' || letter == 0x7F) {
        escaped.append(' ');
      } else if (letter == '^') {
        escaped.append("^ ");
      } else if (letter > 0x7E || letter == '\\' || letter == '%' && next(words, i) == '%') {
        escaped.append(String.format("\\U+%04X", (int) letter));
      } else {
        escaped.append(letter);
      }
    }
    return escaped.toString();
  }

  private static char next(String words, int i) {
    return i + 1 < words.length() ? words.charAt(i + 1) : ' ';
  }
}
