package org.mottle.export.verify;

import com.linuxense.javadbf.DBFException;
import com.linuxense.javadbf.DBFReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a shapefile back and measures it. The area is the signed sum over the rings, clockwise
 * positive, so that a ring of the wrong direction shows.
 */
final class ShapefileReread {
  private static final int FIRST_RECORD = 100;

  private ShapefileReread() {}

  /**
   * @param dbf the attribute table; its {@code .shp} and {@code .shx} lie beside it, if it has any
   */
  static Reread of(Path dbf, boolean table) throws IOException {
    String layer = dbf.getFileName().toString().replaceFirst("\\.dbf$", "");
    try {
      Attributes attributes = Attributes.of(dbf);
      List<String> fields = attributes.fields();
      long rows = attributes.rows();
      if (table) {
        return new Reread(layer, rows, 0, 0, fields);
      }
      Shapes shapes = new Shapes();
      shapes.read(
          littleEndian(dbf.resolveSibling(layer + ".shp")),
          littleEndian(dbf.resolveSibling(layer + ".shx")));
      if (shapes.records != rows) {
        throw new IOException(
            "the .dbf has " + rows + " rows and the .shp " + shapes.records + " shapes");
      }
      return new Reread(layer, rows, shapes.placed, shapes.measure, fields);
    } catch (BufferUnderflowException | IndexOutOfBoundsException e) {
      throw new IOException("ends before its own header says", e);
    }
  }

  private static ByteBuffer littleEndian(Path file) throws IOException {
    return ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** The attribute table, every value of it read. */
  private record Attributes(List<String> fields, long rows) {
    private static final int HEADER = 32;

    static Attributes of(Path dbf) throws IOException {
      byte[] bytes = Files.readAllBytes(dbf);
      List<String> fields = new ArrayList<>();
      try (DBFReader reader =
          new DBFReader(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8)) {
        int width = 1;
        for (int i = 0; i < reader.getFieldCount(); i++) {
          fields.add(reader.getField(i).getName());
          width += reader.getField(i).getLength();
        }
        long rows = reader.getRecordCount();
        long expected = HEADER * (1L + fields.size()) + 1 + rows * width + 1;
        if (bytes.length != expected) {
          throw new IOException(
              "the .dbf has " + bytes.length + " bytes, its header says " + expected);
        }
        for (long row = 0; row < rows; row++) {
          if (reader.nextRecord() == null) {
            throw new IOException("the .dbf ends after " + row + " of its " + rows + " rows");
          }
        }
        return new Attributes(fields, rows);
      } catch (DBFException e) {
        throw new IOException("the .dbf cannot be read: " + e.getMessage(), e);
      }
    }
  }

  /** Sums over the records of a .shp. */
  private static final class Shapes {
    private long records;
    private long placed;
    private double measure;

    void read(ByteBuffer shp, ByteBuffer shx) throws IOException {
      int at = FIRST_RECORD;
      while (at < shp.capacity()) {
        int content = Integer.reverseBytes(shp.getInt(at + 4)) * 2;
        int indexed = Integer.reverseBytes(shx.getInt(FIRST_RECORD + (int) records * 8)) * 2;
        if (indexed != at) {
          throw new IOException(
              "the .shx has record " + (records + 1) + " at " + indexed + ", the .shp at " + at);
        }
        records++;
        record(shp, at + 8);
        at += 8 + content;
      }
      if (shx.capacity() != FIRST_RECORD + records * 8) {
        throw new IOException("the .shx does not have " + records + " records as the .shp has");
      }
    }

    private void record(ByteBuffer shp, int at) throws IOException {
      int type = shp.getInt(at);
      if (type == 0) {
        return;
      }
      placed++;
      if (type == 3 || type == 5) {
        parts(shp, at, type == 5);
      } else if (type != 1) {
        throw new IOException("shape " + records + " is of the unexpected type " + type);
      }
    }

    private void parts(ByteBuffer shp, int at, boolean rings) {
      int parts = shp.getInt(at + 36);
      int points = shp.getInt(at + 40);
      int first = at + 44 + 4 * parts;
      for (int p = 0; p < parts; p++) {
        int from = shp.getInt(at + 44 + 4 * p);
        int to = p + 1 < parts ? shp.getInt(at + 44 + 4 * (p + 1)) : points;
        measure += rings ? clockwise(shp, first, from, to) : length(shp, first, from, to);
      }
    }

    private static double clockwise(ByteBuffer shp, int first, int from, int to) {
      // relative to the first point: the products of whole coordinates would lose the decimals
      double x0 = shp.getDouble(first + 16 * from);
      double y0 = shp.getDouble(first + 16 * from + 8);
      double twice = 0;
      for (int i = from; i + 1 < to; i++) {
        int a = first + 16 * i;
        double ax = shp.getDouble(a) - x0;
        double ay = shp.getDouble(a + 8) - y0;
        double bx = shp.getDouble(a + 16) - x0;
        double by = shp.getDouble(a + 24) - y0;
        twice += bx * ay - ax * by;
      }
      return twice / 2;
    }

    private static double length(ByteBuffer shp, int first, int from, int to) {
      double length = 0;
      for (int i = from; i + 1 < to; i++) {
        int a = first + 16 * i;
        length +=
            Math.hypot(
                shp.getDouble(a + 16) - shp.getDouble(a),
                shp.getDouble(a + 24) - shp.getDouble(a + 8));
      }
      return length;
    }
  }
}
