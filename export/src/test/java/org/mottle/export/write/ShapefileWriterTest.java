package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.linuxense.javadbf.DBFField;
import com.linuxense.javadbf.DBFReader;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Date;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/** Attributes are read back by javadbf; shapes by the numbers of the 1998 description. */
class ShapefileWriterTest {
  @TempDir Path folder;

  private List<String> write(LayerData data) throws IOException {
    return new ShapefileWriter(Examples.CRS, Examples.provenance()).write(folder, data);
  }

  private ByteBuffer bytes(String name) throws IOException {
    return ByteBuffer.wrap(Files.readAllBytes(folder.resolve(name)));
  }

  @Test
  void attributesComeBack() throws IOException {
    List<String> notes = write(Examples.odd());
    try (InputStream in = Files.newInputStream(folder.resolve("odd.dbf"));
        DBFReader dbf = new DBFReader(in, StandardCharsets.UTF_8)) {
      assertThat(dbf.getRecordCount()).isEqualTo(4);
      List<String> names = new java.util.ArrayList<>();
      for (int i = 0; i < dbf.getFieldCount(); i++) {
        DBFField field = dbf.getField(i);
        names.add(field.getName() + " " + field.getType() + " " + field.getDecimalCount());
      }
      assertThat(names)
          .containsExactly("txt CHARACTER 0", "n NUMERIC 0", "v NUMERIC 3", "day DATE 0");
      Object[] full = dbf.nextRecord();
      assertThat(full[0]).isEqualTo(Examples.LETTERS);
      assertThat(full[1]).isEqualTo(new BigDecimal("1234567890123"));
      assertThat(full[2]).isEqualTo(new BigDecimal("17.123"));
      assertThat(((Date) full[3]).toInstant().atZone(ZoneId.systemDefault()).toLocalDate())
          .isEqualTo(LocalDate.of(2031, 2, 28));
      Object[] missing = dbf.nextRecord();
      assertThat((String) missing[0]).isBlank();
      assertThat(missing[1]).isEqualTo(new BigDecimal("-9999"));
      assertThat(missing[2]).isEqualTo(new BigDecimal("-9999.000"));
      assertThat(missing[3]).isNull();
      assertThat((String) dbf.nextRecord()[0]).isEqualTo("é".repeat(127));
      assertThat(dbf.nextRecord()[2]).isEqualTo(new BigDecimal("-9999.000"));
    }
    assertThat(notes).singleElement().asString().startsWith("shapefile/odd.dbf: txt cut in row 3");
  }

  /** The library would write the day of the run's clock and drop digits. */
  @Test
  void headerHasTheDayOfTheRunAndNumbersKeepTheirDigits() throws IOException {
    List<Double> given = List.of(12345678901234567.0, -1234567890123.125, 0.0005, -0.0004, 2.5e-9);
    List<String> wanted = List.of("12345678901234568", "-1234567890123.125", "0.001", "0", "0");
    write(
        new LayerData(
            Examples.ODD, given.stream().map(v -> Examples.ODD.row(Map.of("v", v))).toList()));
    byte[] header = Files.readAllBytes(folder.resolve("odd.dbf"));
    assertThat(new byte[] {header[1], header[2], header[3]}).containsExactly(131, 5, 2);
    try (InputStream in = Files.newInputStream(folder.resolve("odd.dbf"));
        DBFReader dbf = new DBFReader(in, StandardCharsets.UTF_8)) {
      for (String value : wanted) {
        assertThat((BigDecimal) dbf.nextRecord()[2]).isEqualByComparingTo(value);
      }
    }
  }

  @Test
  void refusesDatesOfFewerDigits() {
    LayerData data =
        new LayerData(
            Examples.ODD, List.of(Examples.ODD.row(Map.of("day", LocalDate.of(800, 12, 25)))));
    assertThatThrownBy(() -> write(data))
        .hasMessage("layer odd, field day: a date is from the year 1000 on, was 0800-12-25");
  }

  @Test
  void neverCutsALetterInTwo() throws IOException {
    for (String letter : List.of("é", "緑", "🌱")) {
      LayerData data =
          new LayerData(
              Examples.ODD, List.of(Examples.ODD.row(Map.of("txt", "x" + letter.repeat(200)))));
      write(data);
      try (InputStream in = Files.newInputStream(folder.resolve("odd.dbf"));
          DBFReader dbf = new DBFReader(in, StandardCharsets.UTF_8)) {
        assertThat(((String) dbf.nextRecord()[0]).strip()).matches("x(" + letter + ")+");
      }
    }
  }

  @Test
  void ringsAreWoundAsTheDescriptionSays() throws IOException {
    write(Examples.odd());
    ByteBuffer shp = bytes("odd.shp");
    assertThat(shp.getInt(0)).isEqualTo(9994);
    assertThat(shp.getInt(24) * 2).isEqualTo(shp.capacity());
    shp.order(ByteOrder.LITTLE_ENDIAN);
    assertThat(shp.getInt(28)).isEqualTo(1000);
    assertThat(shp.getInt(32)).isEqualTo(5);
    assertThat(shp.getDouble(36)).isEqualTo(Examples.EAST);
    assertThat(shp.getDouble(60)).isEqualTo(Examples.NORTH + 20);
    // first record: two parts of five points, the outer one clockwise, the hole the other way
    int record = 108;
    assertThat(shp.getInt(record)).isEqualTo(5);
    assertThat(shp.getInt(record + 36)).isEqualTo(2);
    assertThat(shp.getInt(record + 40)).isEqualTo(10);
    assertThat(clockwiseArea(shp, record + 52, 0, 5)).isEqualTo(600);
    assertThat(clockwiseArea(shp, record + 52, 5, 10)).isEqualTo(-25);
    ByteBuffer shx = bytes("odd.shx");
    assertThat(shx.capacity()).isEqualTo(100 + 4 * 8);
    assertThat(shx.getInt(100)).isEqualTo(50);
    int third = shx.getInt(116) * 2;
    assertThat(shx.getInt(120)).isEqualTo(2);
    assertThat(shp.getInt(third + 8)).isZero();
  }

  private static double clockwiseArea(ByteBuffer shp, int points, int from, int to) {
    double twice = 0;
    for (int i = from; i + 1 < to; i++) {
      double x0 = shp.getDouble(points + 16 * i) - Examples.EAST;
      double y0 = shp.getDouble(points + 16 * i + 8) - Examples.NORTH;
      double x1 = shp.getDouble(points + 16 * i + 16) - Examples.EAST;
      double y1 = shp.getDouble(points + 16 * i + 24) - Examples.NORTH;
      twice += x1 * y0 - x0 * y1;
    }
    return twice / 2;
  }

  /** A point record is 10 words; checked against the 1998 description, table 3. */
  @Test
  void pointsAndEmptyLayers() throws IOException {
    write(
        new LayerData(
            Layers.READING,
            List.of(
                Layers.READING.row(
                    new GeometryFactory().createPoint(new Coordinate(1.5, -2.5)), Map.of()))));
    ByteBuffer shp = bytes("reading.shp");
    assertThat(shp.capacity()).isEqualTo(100 + 8 + 20);
    assertThat(shp.getInt(104)).isEqualTo(10);
    assertThat(shp.order(ByteOrder.LITTLE_ENDIAN).getDouble(112)).isEqualTo(1.5);
    assertThat(shp.getDouble(120)).isEqualTo(-2.5);

    write(new LayerData(Layers.PATCH, List.of()));
    assertThat(bytes("patch.shp").capacity()).isEqualTo(100);
    assertThat(bytes("patch.shx").capacity()).isEqualTo(100);
    assertThat(Files.readString(folder.resolve("patch.prj"))).isEqualTo(Examples.CRS.prj());
    assertThat(Files.readString(folder.resolve("patch.cpg"))).isEqualTo("UTF-8");
  }

  @Test
  void refusesNumbersWiderThanTheField() {
    LayerData data = new LayerData(Examples.ODD, List.of(Examples.ODD.row(Map.of("v", 1e18))));
    assertThatThrownBy(() -> write(data))
        .hasMessage(
            "layer odd, field v: 1000000000000000000 has more than the 18 characters"
                + " a shapefile can hold");
  }
}
