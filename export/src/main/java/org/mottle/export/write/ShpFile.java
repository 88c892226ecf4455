package org.mottle.export.write;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.LayerData;

/**
 * The geometry of a shapefile and its index: outer rings clockwise, holes counter-clockwise, a
 * missing geometry as a null shape (ESRI Shapefile Technical Description, 1998). Two passes over
 * the rows: lengths and extent, then the records. Stateless.
 */
final class ShpFile {
  private static final int FILE_CODE = 9994;
  private static final int VERSION = 1000;
  private static final int HEADER_BYTES = 100;
  private static final int RECORD_HEADER_BYTES = 8;
  private static final int NULL_SHAPE = 0;
  private static final int POINT = 1;
  private static final int POLYLINE = 3;
  private static final int POLYGON = 5;

  private ShpFile() {}

  static void write(Path shp, Path shx, LayerData data) throws IOException {
    Envelope extent = new Envelope();
    long bytes = HEADER_BYTES;
    for (FeatureRow row : data.rows()) {
      bytes += RECORD_HEADER_BYTES + contentBytes(row.geometry());
      if (row.geometry() != null) {
        extent.expandToInclude(row.geometry().getEnvelopeInternal());
      }
    }
    if (bytes > 2L * Integer.MAX_VALUE) {
      throw new IOException(
          "layer "
              + data.layer().name()
              + " needs a shapefile of "
              + bytes
              + " bytes, the format ends at "
              + 2L * Integer.MAX_VALUE);
    }
    int type = type(data);
    try (DataOutputStream main = open(shp);
        DataOutputStream index = open(shx)) {
      main.write(header(bytes, type, extent));
      index.write(header(HEADER_BYTES + 8L * data.rows().size(), type, extent));
      long offset = HEADER_BYTES;
      for (int i = 0; i < data.rows().size(); i++) {
        byte[] content = content(data.rows().get(i).geometry(), type);
        // both files count in words of 16 bits, from the first byte of the file
        index.writeInt((int) (offset / 2));
        index.writeInt(content.length / 2);
        main.writeInt(i + 1);
        main.writeInt(content.length / 2);
        main.write(content);
        offset += RECORD_HEADER_BYTES + content.length;
      }
    }
  }

  private static DataOutputStream open(Path file) throws IOException {
    return new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file), 1 << 16));
  }

  private static int type(LayerData data) {
    return switch (data.layer().kind()) {
      case POINT -> POINT;
      case LINE -> POLYLINE;
      case AREA -> POLYGON;
      case NONE -> NULL_SHAPE;
    };
  }

  private static byte[] header(long bytes, int type, Envelope extent) {
    ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES);
    header.putInt(FILE_CODE);
    header.position(24);
    header.putInt((int) (bytes / 2));
    header.order(ByteOrder.LITTLE_ENDIAN);
    header.putInt(VERSION).putInt(type);
    if (!extent.isNull()) {
      putBox(header, extent);
    }
    return header.array();
  }

  private static long contentBytes(Geometry geometry) {
    if (geometry == null) {
      return 4;
    }
    if (geometry instanceof Point) {
      return 20;
    }
    return 44 + 4L * rings(geometry) + 16L * geometry.getNumPoints();
  }

  private static int rings(Geometry geometry) {
    int rings = 0;
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Geometry part = geometry.getGeometryN(i);
      rings += part instanceof Polygon polygon ? 1 + polygon.getNumInteriorRing() : 1;
    }
    return rings;
  }

  private static byte[] content(Geometry geometry, int type) {
    ByteBuffer content =
        ByteBuffer.allocate((int) contentBytes(geometry)).order(ByteOrder.LITTLE_ENDIAN);
    if (geometry == null) {
      return content.putInt(NULL_SHAPE).array();
    }
    content.putInt(type);
    if (geometry instanceof Point point) {
      return content.putDouble(point.getX()).putDouble(point.getY()).array();
    }
    List<Part> parts = parts(geometry);
    putBox(content, geometry.getEnvelopeInternal());
    content.putInt(parts.size()).putInt(geometry.getNumPoints());
    int first = 0;
    for (Part part : parts) {
      content.putInt(first);
      first += part.points.size();
    }
    parts.forEach(part -> part.put(content));
    return content.array();
  }

  private static void putBox(ByteBuffer buffer, Envelope box) {
    buffer.putDouble(box.getMinX()).putDouble(box.getMinY());
    buffer.putDouble(box.getMaxX()).putDouble(box.getMaxY());
  }

  private static List<Part> parts(Geometry geometry) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      if (geometry.getGeometryN(i) instanceof Polygon polygon) {
        parts.add(Part.ring(polygon.getExteriorRing(), false));
        for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
          parts.add(Part.ring(polygon.getInteriorRingN(hole), true));
        }
      } else {
        LineString line = (LineString) geometry.getGeometryN(i);
        parts.add(new Part(line.getCoordinateSequence(), false));
      }
    }
    return parts;
  }

  /** Points of one part, to be written in their own or the opposite order. */
  private record Part(CoordinateSequence points, boolean reversed) {
    static Part ring(LineString ring, boolean counterClockwise) {
      CoordinateSequence points = ring.getCoordinateSequence();
      return new Part(points, Orientation.isCCW(points) != counterClockwise);
    }

    void put(ByteBuffer content) {
      int n = points.size();
      for (int i = 0; i < n; i++) {
        int at = reversed ? n - 1 - i : i;
        content.putDouble(points.getX(at)).putDouble(points.getY(at));
      }
    }
  }
}
