package org.mottle.export.read;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * The shapes of a {@code .shp} (ESRI Shapefile Technical Description, July 1998): points,
 * multipoints, lines, polygons and null shapes, with heights and measures read over. The length of
 * the file stands in its header, which shows a file that was cut off.
 */
final class ShpGeometries {
  private static final int FILE_CODE = 9994;
  private static final int HEADER_BYTES = 100;
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final String name;
  private final ByteBuffer bytes;
  private final Problems problems;

  ShpGeometries(String name, byte[] bytes, Problems problems) {
    this.name = name;
    this.bytes = ByteBuffer.wrap(bytes);
    this.problems = problems;
  }

  /** In the order of the file; null for null shapes. */
  List<Geometry> read() {
    if (bytes.limit() < HEADER_BYTES || big(0) != FILE_CODE) {
      throw new InputRefused("%s is not a shapefile: it does not start as one".formatted(name));
    }
    long length = 2L * big(24);
    if (bytes.limit() < length) {
      throw new InputRefused(
          "%s is cut off: %d of its %d bytes are there; copy it again"
              .formatted(name, bytes.limit(), length));
    }
    List<Geometry> shapes = new ArrayList<>();
    int at = HEADER_BYTES;
    while (at + 8 <= length) {
      int content = 2 * big(at + 4);
      if (content < 4 || at + 8L + content > length) {
        throw new InputRefused(
            "%s: feature %d is cut off; copy the file again".formatted(name, shapes.size() + 1));
      }
      shapes.add(shape(shapes.size() + 1, at + 8, content));
      at += 8 + content;
    }
    return shapes;
  }

  private int big(int at) {
    return bytes.order(ByteOrder.BIG_ENDIAN).getInt(at);
  }

  private int little(int at) {
    return bytes.order(ByteOrder.LITTLE_ENDIAN).getInt(at);
  }

  private Geometry shape(int number, int at, int content) {
    int type = little(at);
    try {
      return switch (type % 10) {
        case 0 -> null;
        case 1 -> FACTORY.createPoint(coordinate(at + 4));
        case 8 -> FACTORY.createMultiPointFromCoords(coordinates(at + 40, little(at + 36)));
        case 3 -> lines(parts(at, content));
        case 5 -> ShpPolygons.of(FACTORY, parts(at, content));
        default -> throw new IllegalArgumentException("shapes of type " + type + " are not read");
      };
    } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
      problems.add(
          "%s, feature %d: %s",
          name,
          number,
          e instanceof IndexOutOfBoundsException ? "its positions are cut off" : e.getMessage());
      return null;
    }
  }

  private Coordinate coordinate(int at) {
    bytes.order(ByteOrder.LITTLE_ENDIAN);
    return new Coordinate(bytes.getDouble(at), bytes.getDouble(at + 8));
  }

  private Coordinate[] coordinates(int at, int count) {
    if (count < 0 || at + 16L * count > bytes.limit()) {
      throw new IllegalArgumentException("it claims " + count + " positions, which are not there");
    }
    Coordinate[] all = new Coordinate[count];
    for (int i = 0; i < count; i++) {
      all[i] = coordinate(at + 16 * i);
    }
    return all;
  }

  private List<Coordinate[]> parts(int at, int content) {
    int parts = little(at + 36);
    int points = little(at + 40);
    if (parts < 0 || points < 0 || 44 + 4L * parts + 16L * points > content) {
      throw new IllegalArgumentException(
          "it claims %d parts of %d positions, which are not there".formatted(parts, points));
    }
    List<Coordinate[]> all = new ArrayList<>();
    int first = at + 44 + 4 * parts;
    for (int i = 0; i < parts; i++) {
      int from = little(at + 44 + 4 * i);
      int to = i + 1 < parts ? little(at + 44 + 4 * (i + 1)) : points;
      if (from < 0 || to > points || from > to) {
        throw new IllegalArgumentException("its part " + (i + 1) + " is out of order");
      }
      all.add(coordinates(first + 16 * from, to - from));
    }
    return all;
  }

  private static Geometry lines(List<Coordinate[]> parts) {
    LineString[] lines = parts.stream().map(FACTORY::createLineString).toArray(LineString[]::new);
    return lines.length == 1 ? lines[0] : FACTORY.createMultiLineString(lines);
  }
}
