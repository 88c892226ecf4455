package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

class CsvReaderTest {
  private static final InputOptions UTM = InputOptions.NONE.withCrs(Crs.utm(28, true));

  @TempDir Path folder;

  private FeatureTable read(String text, Charset charset, InputOptions options) {
    return FeatureFile.read(TestFiles.write(folder, "r.csv", text, charset), options);
  }

  private static void assertGreenFive(FeatureTable table, String note) {
    assertThat(table.columns()).containsExactly("green_id", "x", "y", "vwc_raw");
    assertThat(table.rows()).hasSize(2);
    assertThat(table.rows().get(0).values().get(0)).isEqualTo("Grün 5");
    assertThat(table.rows().get(0).geometry().getCoordinate().x).isEqualTo(500001.25);
    assertThat(Cells.number(table.rows().get(1).values().get(3), table.origin().decimalComma()))
        .isEqualTo(19.5);
    assertThat(table.rows().get(1).number()).isEqualTo(3);
    assertThat(table.notes()).containsExactly(note);
  }

  @Test
  void utf8WithByteOrderMark() {
    String text =
        "\uFEFFgreen_id,x,y,vwc_raw\r\nGrün 5,500001.25,5316302,18\r\nGrün 5,500002,5316303,19.5\r\n";
    assertGreenFive(
        read(text, StandardCharsets.UTF_8, UTM),
        "r.csv: UTF-8 with BOM, comma-separated, decimal point");
  }

  @Test
  void utf16OfASpreadsheetWithTabs() {
    String text =
        "\uFEFFgreen_id\tx\ty\tvwc_raw\nGrün 5\t500001,25\t5316302\t18\nGrün 5\t500002\t5316303\t19,5";
    String note = "r.csv: UTF-16, tab-separated, decimal comma";
    assertGreenFive(read(text, StandardCharsets.UTF_16LE, UTM), note);
    assertGreenFive(read(text, StandardCharsets.UTF_16BE, UTM), note);
    assertGreenFive(read(text.substring(1), StandardCharsets.UTF_16LE, UTM), note);
  }

  @Test
  void windows1252WithSemicolonsAndDecimalComma() {
    String text = "green_id;x;y;vwc_raw\nGrün 5;500001,25;5316302;18\nGrün 5;500002;5316303;19,5\n";
    assertGreenFive(
        read(text, Charset.forName("windows-1252"), UTM),
        "r.csv: Windows-1252, semicolon-separated, decimal comma");
  }

  @Test
  void aSeparatorNamedByTheSpreadsheetKeepsTheRowNumbers() {
    FeatureTable table = read("sep=;\r\nx;y\r\n500001;5316302\r\n", StandardCharsets.UTF_8, UTM);
    assertThat(table.columns()).containsExactly("x", "y");
    assertThat(table.rows().get(0).number()).isEqualTo(3);
  }

  @Test
  void quotedFieldsHoldSeparatorsQuotesAndLineEnds() {
    String text =
        "st_id,x,y\n\"a, \"\"b\"\"\",500001,5316302\n\n\"two\nlines\",500002,5316303\nlast,500003,5316304";
    FeatureTable table = read(text, StandardCharsets.UTF_8, UTM);
    assertThat(table.rows().stream().map(r -> r.values().get(0)))
        .containsExactly("a, \"b\"", "two\nlines", "last");
    assertThat(table.rows().stream().map(FeatureTable.Row::number)).containsExactly(2, 4, 6);
  }

  @Test
  void longitudeAndLatitudeAreWgs84ByTheirNames() {
    FeatureTable table =
        read("lon,lat\n-14.9999,48.0001\n", StandardCharsets.UTF_8, InputOptions.NONE);
    assertThat(table.crs()).contains(Crs.wgs84());
    assertThat(table.notes())
        .containsExactly(
            "r.csv: UTF-8, comma-separated, decimal point",
            "r.csv: lon, lat are read as WGS 84 (EPSG:4326), by the names of the columns");
    assertThat(
            read(
                    "lon,lat\n-14.9999,48.0001\n",
                    StandardCharsets.UTF_8,
                    InputOptions.NONE.withCrs(Crs.ofEpsg(4258)))
                .crs())
        .contains(Crs.ofEpsg(4258));
  }

  @Test
  void xAndYInDegreesNeedTheirCrsNamed() {
    String text = "x,y\n-14.9999,48.0001\n";
    assertThatThrownBy(() -> read(text, StandardCharsets.UTF_8, InputOptions.NONE))
        .hasMessage(
            "r.csv does not say which CRS its x, y are in; name its CRS with --crs, like --crs EPSG:32630");
    assertThat(read(text, StandardCharsets.UTF_8, InputOptions.NONE.withCrs(Crs.wgs84())).crs())
        .contains(Crs.wgs84());
  }

  @Test
  void headingsAreMapped() {
    FeatureTable table =
        read(
            "RDX,RDY\n500001,5316302\n",
            StandardCharsets.UTF_8,
            UTM.withColumns(Map.of("x", "RDX", "y", "rdy")));
    assertThat(table.rows().get(0).geometry().getCoordinate().y).isEqualTo(5316302);
  }

  @Test
  void everythingWrongIsToldAtOnce() {
    String text = "x,y,x\n1,2,3\n1,2\n1,2,3,4\n\"open,2,3\n";
    assertThatThrownBy(() -> read(text, StandardCharsets.UTF_8, UTM))
        .isInstanceOfSatisfying(
            InputRefused.class,
            e ->
                assertThat(e.lines())
                    .isEqualTo(
                        List.of(
                            "r.csv: the heading 'x' stands twice; rename one",
                            "r.csv, row 5: a quote is opened and never closed",
                            "r.csv: the heading has 3 fields, but not row 3 (2), 4 (4); quote fields that hold the separator")));
  }

  /** The parser ends at such a field; the rows after it are looked at all the same. */
  @Test
  void whatFollowsAClosingQuoteIsToldByItsRow() {
    String fault = ": more follows after a closing quote; write a quote inside a field twice";
    for (String end : List.of("\n", "\r\n", "\r")) {
      String text =
          String.join(
              end,
              "st,x,y",
              "\"two",
              "lines\",1,2",
              "\"5\" rod,1,2",
              "b,1",
              "1,\"2\"3,4",
              "\"c,1,2");
      assertThatThrownBy(() -> read(text, StandardCharsets.UTF_8, UTM))
          .isInstanceOfSatisfying(
              InputRefused.class,
              e ->
                  assertThat(e.lines())
                      .containsExactly(
                          "r.csv, row 4" + fault,
                          "r.csv, row 6" + fault,
                          "r.csv, row 7: a quote is opened and never closed",
                          "r.csv: the heading has 3 fields, but not row 5 (2); quote fields that hold the separator"));
    }
    assertThatThrownBy(() -> read("\"x,y\n1,2\n", StandardCharsets.UTF_8, UTM))
        .hasMessage("r.csv, row 1: a quote is opened and never closed");
  }

  @Test
  void noHeadings() {
    assertThatThrownBy(() -> read("500001,5316302\n500002,5316302\n", StandardCharsets.UTF_8, UTM))
        .hasMessage(
            "r.csv: the first row holds numbers ('500001', '5316302'); put a row of headings above it");
  }
}
