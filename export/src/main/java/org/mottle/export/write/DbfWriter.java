package org.mottle.export.write;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.LayerData;

/**
 * The attribute table of a shapefile: dBASE III, UTF-8. Our own because the header's date has to be
 * the run's and not today's: the same rows give the same bytes. One object a file, one thread.
 */
final class DbfWriter {
  /** Stands for a number that was not recorded; said so in the data dictionary. */
  static final int MISSING = -9999;

  static final String MISSING_SAID =
      "the format has no missing numbers: " + MISSING + " stands for one; a missing text is blank";

  private static final int NUMBER_WIDTH = 18;
  private static final int DATE_WIDTH = 8;
  private static final int NAMED_ROWS = 5;
  private static final byte DBASE_III = 3;
  private static final byte END_OF_FIELDS = 0x0D;
  private static final byte END_OF_FILE = 0x1A;
  private static final byte NOT_DELETED = ' ';
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("yyyyMMdd", Locale.ROOT);

  private final LayerData data;
  private final List<Field> fields;
  private final LocalDate changed;
  private final Map<String, List<Integer>> cutRows = new LinkedHashMap<>();

  DbfWriter(LayerData data, Instant changed) {
    this.data = data;
    this.fields = data.layer().fields();
    this.changed = LocalDate.ofInstant(changed, ZoneOffset.UTC);
  }

  void write(Path file) throws IOException {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      out.write(header());
      byte[] record = new byte[recordLength()];
      for (int i = 0; i < data.rows().size(); i++) {
        fill(record, data.rows().get(i), i + 1);
        out.write(record);
      }
      out.write(END_OF_FILE);
    }
  }

  /** Texts that were longer than their field, a line a field; empty before {@link #write}. */
  List<String> cuts() {
    List<String> lines = new ArrayList<>();
    cutRows.forEach(
        (field, rows) -> {
          List<Integer> named = rows.subList(0, Math.min(NAMED_ROWS, rows.size()));
          String more = rows.size() > named.size() ? " and " + (rows.size() - named.size()) : "";
          lines.add(
              field
                  + " cut in row "
                  + named.toString().replaceAll("[\\[\\]]", "")
                  + (more.isEmpty() ? "" : more + " more")
                  + "; the GeoPackage and the GeoJSON have the whole text");
        });
    return lines;
  }

  private byte[] header() {
    int length = 32 + 32 * fields.size() + 1;
    ByteBuffer header = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    header.put(DBASE_III);
    header.put((byte) (changed.getYear() - 1900));
    header.put((byte) changed.getMonthValue()).put((byte) changed.getDayOfMonth());
    header.putInt(data.rows().size());
    header.putShort((short) length).putShort((short) recordLength());
    int at = 32;
    for (Field field : fields) {
      header.position(at);
      header.put(field.name().getBytes(StandardCharsets.US_ASCII));
      header.put(at + 11, letter(field));
      header.put(at + 16, (byte) width(field));
      header.put(at + 17, (byte) field.decimals());
      at += 32;
    }
    header.put(at, END_OF_FIELDS);
    return header.array();
  }

  private int recordLength() {
    return 1 + fields.stream().mapToInt(DbfWriter::width).sum();
  }

  private static byte letter(Field field) {
    return (byte)
        switch (field.type()) {
          case TEXT -> 'C';
          case INTEGER, REAL -> 'N';
          case DATE -> 'D';
        };
  }

  private static int width(Field field) {
    return switch (field.type()) {
      case TEXT -> field.width();
      case INTEGER, REAL -> NUMBER_WIDTH;
      case DATE -> DATE_WIDTH;
    };
  }

  private void fill(byte[] record, FeatureRow row, int number) {
    Arrays.fill(record, (byte) ' ');
    record[0] = NOT_DELETED;
    int at = 1;
    for (int f = 0; f < fields.size(); f++) {
      Field field = fields.get(f);
      Object value = row.value(f);
      switch (field.type()) {
        case TEXT -> text(record, at, field, value, number);
        case INTEGER -> right(record, at, field, whole(value));
        case REAL -> right(record, at, field, real(value, field));
        case DATE -> right(record, at, field, value == null ? "" : DATE.format((LocalDate) value));
      }
      at += width(field);
    }
  }

  private static String whole(Object value) {
    return value == null ? Integer.toString(MISSING) : value.toString();
  }

  private static String real(Object value, Field field) {
    return value == null
        ? Integer.toString(MISSING)
        : FixedDecimals.text((Double) value, field.decimals());
  }

  private void right(byte[] record, int at, Field field, String number) {
    int width = width(field);
    if (number.length() > width) {
      throw new IllegalArgumentException(
          "layer "
              + data.layer().name()
              + ", field "
              + field.name()
              + ": "
              + number
              + " has more than the "
              + width
              + " characters a shapefile can hold");
    }
    put(record, at + width - number.length(), number.getBytes(StandardCharsets.US_ASCII));
  }

  private void text(byte[] record, int at, Field field, Object value, int number) {
    if (value == null) {
      return;
    }
    byte[] bytes = ((String) value).getBytes(StandardCharsets.UTF_8);
    int length = Math.min(bytes.length, field.width());
    if (length < bytes.length) {
      // never in the middle of a letter: 10xxxxxx continues one
      while (length > 0 && (bytes[length] & 0xC0) == 0x80) {
        length--;
      }
      cutRows.computeIfAbsent(field.name(), name -> new ArrayList<>()).add(number);
    }
    System.arraycopy(bytes, 0, record, at, length);
  }

  private static void put(byte[] record, int at, byte[] bytes) {
    System.arraycopy(bytes, 0, record, at, bytes.length);
  }
}
