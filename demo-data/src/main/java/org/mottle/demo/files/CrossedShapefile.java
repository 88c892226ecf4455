package org.mottle.demo.files;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.site.Ring;

/**
 * D14: the outline of G6 as somebody sent it, a shapefile of one polygon without a .prj, in which
 * six vertices were walked the wrong way round, so that the outline crosses itself (shapefile
 * technical description, July 1998).
 */
final class CrossedShapefile {

  private static final int FIRST_SWAPPED = 20;
  private static final int LAST_SWAPPED = 26;
  private static final int HEADER_BYTES = 100;

  private CrossedShapefile() {}

  /** The outline, clockwise and closed as the format asks, EPSG:32628. */
  static List<Point> outline() {
    GreenSite green = CoursePlace.green("G6");
    Ring ring = green.ring();
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      points.add(green.world(ring.vertex(i)));
    }
    Collections.reverse(points.subList(FIRST_SWAPPED, LAST_SWAPPED));
    Collections.reverse(points);
    points.add(points.get(0));
    return points;
  }

  static byte[] shp() {
    List<Point> points = outline();
    int content = 4 + 32 + 4 + 4 + 4 + 16 * points.size();
    ByteBuffer b = header(HEADER_BYTES + 8 + content, points);
    b.order(ByteOrder.BIG_ENDIAN).putInt(1).putInt(content / 2);
    b.order(ByteOrder.LITTLE_ENDIAN).putInt(5);
    box(b, points);
    b.putInt(1).putInt(points.size()).putInt(0);
    points.forEach(p -> b.putDouble(p.x()).putDouble(p.y()));
    return b.array();
  }

  static byte[] shx() {
    List<Point> points = outline();
    int content = 4 + 32 + 4 + 4 + 4 + 16 * points.size();
    ByteBuffer b = header(HEADER_BYTES + 8, points);
    b.order(ByteOrder.BIG_ENDIAN).putInt(HEADER_BYTES / 2).putInt(content / 2);
    return b.array();
  }

  /** One column, green_id, one row. */
  static byte[] dbf() {
    ByteBuffer b = ByteBuffer.allocate(32 + 32 + 1 + 9 + 1).order(ByteOrder.LITTLE_ENDIAN);
    b.put((byte) 3).put((byte) 125).put((byte) 5).put((byte) 1);
    b.putInt(1).putShort((short) 65).putShort((short) 9);
    b.position(32);
    b.put("green_id".getBytes(StandardCharsets.US_ASCII));
    b.position(32 + 11);
    b.put((byte) 'C');
    b.position(32 + 16);
    b.put((byte) 8);
    b.position(64);
    b.put((byte) 0x0D).put(" G6      ".getBytes(StandardCharsets.US_ASCII)).put((byte) 0x1A);
    return b.array();
  }

  private static ByteBuffer header(int bytes, List<Point> points) {
    ByteBuffer b = ByteBuffer.allocate(bytes).order(ByteOrder.BIG_ENDIAN);
    b.putInt(9994).position(24);
    b.putInt(bytes / 2);
    b.order(ByteOrder.LITTLE_ENDIAN).putInt(1000).putInt(5);
    box(b, points);
    b.position(HEADER_BYTES);
    return b;
  }

  private static void box(ByteBuffer b, List<Point> points) {
    b.putDouble(points.stream().mapToDouble(Point::x).min().getAsDouble());
    b.putDouble(points.stream().mapToDouble(Point::y).min().getAsDouble());
    b.putDouble(points.stream().mapToDouble(Point::x).max().getAsDouble());
    b.putDouble(points.stream().mapToDouble(Point::y).max().getAsDouble());
  }
}
