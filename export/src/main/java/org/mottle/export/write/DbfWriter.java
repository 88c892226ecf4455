package org.mottle.export.write;

import com.linuxense.javadbf.DBFDataType;
import com.linuxense.javadbf.DBFException;
import com.linuxense.javadbf.DBFField;
import com.linuxense.javadbf.DBFWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.LayerData;

/**
 * The attribute table of a shapefile: dBASE III, UTF-8, by javadbf.
 *
 * <p>Ours is what the library does silently or differently every day: the header has the run's date
 * and not today's, so that the same rows give the same bytes; a text is cut between letters and the
 * cut is told; a number or a date wider than its field is refused, where the library drops digits;
 * numbers are rounded as in the other formats. The table is held in memory. One object a file, one
 * thread.
 */
final class DbfWriter {
  /** Stands for a number that was not recorded; said so in the data dictionary. */
  static final int MISSING = -9999;

  static final String MISSING_SAID =
      "the format has no missing numbers: " + MISSING + " stands for one; a missing text is blank";

  private static final int NUMBER_WIDTH = 18;
  private static final int DATE_WIDTH = 8;

  /** The library writes earlier years with fewer digits, which shifts the rest of the row. */
  private static final int FIRST_YEAR = 1000;

  private static final int NAMED_ROWS = 5;

  /** Place of the year of the last change in the header; month and day follow. */
  private static final int CHANGED = 1;

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
    ByteArrayOutputStream table = new ByteArrayOutputStream();
    try (DBFWriter writer = new DBFWriter(table, StandardCharsets.UTF_8)) {
      writer.setFields(fields.stream().map(DbfWriter::declared).toArray(DBFField[]::new));
      for (int i = 0; i < data.rows().size(); i++) {
        writer.addRecord(record(data.rows().get(i), i + 1));
      }
    } catch (DBFException e) {
      throw new IOException(file.getFileName() + ": " + e.getMessage(), e);
    }
    byte[] bytes = table.toByteArray();
    bytes[CHANGED] = (byte) (changed.getYear() - 1900);
    bytes[CHANGED + 1] = (byte) changed.getMonthValue();
    bytes[CHANGED + 2] = (byte) changed.getDayOfMonth();
    Files.write(file, bytes);
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

  private static DBFField declared(Field field) {
    return switch (field.type()) {
      case TEXT -> new DBFField(field.name(), DBFDataType.CHARACTER, field.width());
      case INTEGER -> new DBFField(field.name(), DBFDataType.NUMERIC, NUMBER_WIDTH, 0);
      case REAL -> new DBFField(field.name(), DBFDataType.NUMERIC, NUMBER_WIDTH, field.decimals());
      case DATE -> new DBFField(field.name(), DBFDataType.DATE);
    };
  }

  private Object[] record(FeatureRow row, int number) {
    Object[] record = new Object[fields.size()];
    for (int f = 0; f < record.length; f++) {
      Field field = fields.get(f);
      Object value = row.value(f);
      record[f] =
          switch (field.type()) {
            case TEXT -> value == null ? null : text(field, (String) value, number);
            case INTEGER -> number(field, value == null ? "" + MISSING : value.toString());
            case REAL ->
                number(
                    field,
                    value == null
                        ? "" + MISSING
                        : FixedDecimals.text((Double) value, field.decimals()));
            case DATE -> value == null ? null : date(field, (LocalDate) value);
          };
    }
    return record;
  }

  /** Of the digits behind the point the library cuts off what does not fit: by then only zeros. */
  private BigDecimal number(Field field, String number) {
    requireWidth(field, number, NUMBER_WIDTH);
    return new BigDecimal(number);
  }

  /** By the calendar of the library, which takes it apart again. */
  private java.util.Date date(Field field, LocalDate day) {
    requireWidth(field, day.toString().replace("-", ""), DATE_WIDTH);
    if (day.getYear() < FIRST_YEAR) {
      throw new IllegalArgumentException(
          "layer %s, field %s: a date is from the year %d on, was %s"
              .formatted(data.layer().name(), field.name(), FIRST_YEAR, day));
    }
    return new GregorianCalendar(day.getYear(), day.getMonthValue() - 1, day.getDayOfMonth(), 12, 0)
        .getTime();
  }

  private void requireWidth(Field field, String value, int width) {
    if (value.length() > width) {
      throw new IllegalArgumentException(
          "layer "
              + data.layer().name()
              + ", field "
              + field.name()
              + ": "
              + value
              + " has more than the "
              + width
              + " characters a shapefile can hold");
    }
  }

  private String text(Field field, String value, int number) {
    byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
    if (bytes.length <= field.width()) {
      return value;
    }
    int length = field.width();
    // never in the middle of a letter: 10xxxxxx continues one
    while (length > 0 && (bytes[length] & 0xC0) == 0x80) {
      length--;
    }
    cutRows.computeIfAbsent(field.name(), name -> new ArrayList<>()).add(number);
    return new String(bytes, 0, length, StandardCharsets.UTF_8);
  }
}
