package org.mottle.export.read;

import com.linuxense.javadbf.DBFException;
import com.linuxense.javadbf.DBFReader;
import com.linuxense.javadbf.DBFRow;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.mottle.export.problem.InputRefused;

/**
 * The attributes of a shapefile. Encoding: what the {@code .cpg} says; without one UTF-8 if the
 * bytes are valid UTF-8, else Windows-1252. Dates come out as ISO 8601 text.
 *
 * @param columns headings
 * @param rows values of each record; null for records marked as deleted
 */
record DbfTable(List<String> columns, List<List<Object>> rows) {

  static DbfTable read(Path dbf, Optional<Path> cpg, List<String> notes) throws IOException {
    byte[] bytes = Files.readAllBytes(dbf);
    String name = dbf.getFileName().toString();
    requireWhole(name, bytes);
    Charset charset = charset(name, bytes, cpg, notes);
    try (DBFReader reader = new DBFReader(new ByteArrayInputStream(bytes), charset, true)) {
      List<String> columns = new ArrayList<>();
      for (int i = 0; i < reader.getFieldCount(); i++) {
        columns.add(reader.getField(i).getName().strip());
      }
      // the reader puts the deletion mark before the fields
      boolean marked = !columns.isEmpty() && columns.get(0).equals("deleted");
      List<List<Object>> rows = new ArrayList<>();
      for (DBFRow row = reader.nextRow(); row != null; row = reader.nextRow()) {
        List<Object> values = new ArrayList<>();
        for (int i = marked ? 1 : 0; i < columns.size(); i++) {
          values.add(plain(row.getObject(i)));
        }
        rows.add(row.isDeleted() ? null : values);
      }
      return new DbfTable(marked ? columns.subList(1, columns.size()) : columns, rows);
    } catch (DBFException e) {
      throw new InputRefused("%s cannot be read: %s".formatted(name, e.getMessage()));
    }
  }

  private static void requireWhole(String name, byte[] bytes) {
    if (bytes.length < 33) {
      throw new InputRefused("%s is not a dBASE table: it is too short".formatted(name));
    }
    ByteBuffer head = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    long expected =
        (head.getShort(8) & 0xFFFF) + (head.getInt(4) & 0xFFFFFFFFL) * (head.getShort(10) & 0xFFFF);
    if (bytes.length < expected) {
      throw new InputRefused(
          "%s is cut off: %d of its %d bytes are there; copy it again"
              .formatted(name, bytes.length, expected));
    }
  }

  private static Charset charset(String name, byte[] bytes, Optional<Path> cpg, List<String> notes)
      throws IOException {
    if (cpg.isPresent()) {
      String text = Files.readString(cpg.get(), StandardCharsets.ISO_8859_1).strip();
      try {
        return Charset.forName(text.matches("\\d{4}") ? "windows-" + text : text);
      } catch (IllegalArgumentException e) {
        notes.add(
            "%s names the encoding '%s', which is not known"
                .formatted(cpg.get().getFileName(), text));
      }
    }
    int header = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getShort(8) & 0xFFFF;
    byte[] records = Arrays.copyOfRange(bytes, Math.min(header, bytes.length), bytes.length);
    boolean ascii = true;
    for (byte b : records) {
      ascii &= b >= 0;
    }
    boolean utf8 = TextEncoding.isUtf8(records);
    if (!ascii) {
      notes.add(
          "%s names no encoding (.cpg); read as %s"
              .formatted(name, utf8 ? "UTF-8" : "Windows-1252"));
    }
    return utf8 ? StandardCharsets.UTF_8 : Charset.forName("windows-1252");
  }

  private static Object plain(Object value) {
    if (value instanceof Date date) {
      return LocalDate.ofInstant(date.toInstant(), ZoneId.systemDefault()).toString();
    }
    return value instanceof String text ? text.stripTrailing() : value;
  }
}
