package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.PointTableReader.Missing;

class PointTableReaderTest {
  @TempDir Path folder;

  private PointTable read(String text, Missing missing, String... wanted) {
    String file = TestFiles.write(folder, "p.csv", text);
    return PointTableReader.read(file, "x", "y", List.of(wanted), missing);
  }

  @Test
  void aTableNeedsNoCrs() {
    PointTable table =
        PointTableReader.read(
            TestFiles.path("validation/field/samples.csv"),
            "x",
            "y",
            List.of("om", "dist"),
            Missing.LEAVE_OUT);
    assertThat(table.size()).isEqualTo(153);
    assertThat(table.x()[0]).isEqualTo(181072);
    assertThat(table.values().get("dist")[0]).isEqualTo(0.00135803);
  }

  @Test
  void rowsWithoutAValueAreLeftOutAndTold() {
    PointTable table =
        read("x,y,z,w\n1,2,3,4\n1,3,NA,5\n1,4,5,\n1,5,6,7\n", Missing.LEAVE_OUT, "z", "w");
    assertThat(table.rows()).containsExactly(2, 5);
    assertThat(table.values().get("z")).containsExactly(3, 6);
    assertThat(table.y()).containsExactly(2, 5);
    assertThat(table.notes())
        .containsExactly(
            "p.csv: UTF-8, comma-separated, decimal point",
            "p.csv: no value of z in row 3, left out",
            "p.csv: no value of w in row 4, left out");
  }

  @Test
  void targetsKeepTheirRows() {
    PointTable table = read("x,y,z\n1,2,3\n1,3,NA\n", Missing.KEEP, "z");
    assertThat(table.values().get("z")).containsExactly(3, Double.NaN);
  }

  @Test
  void pointsOfAGisFile() {
    PointTable table =
        PointTableReader.read(
            TestFiles.path("validation/sample.gpkg"), "x", "y", List.of("vwc"), Missing.LEAVE_OUT);
    assertThat(table.x()[0]).isEqualTo(500000);
    assertThat(table.size()).isEqualTo(2);
  }

  @Test
  void everythingWrongAtOnce() {
    assertThatThrownBy(() -> read("a,y,z\n1,2,x\n1,,3\n", Missing.LEAVE_OUT, "z", "q"))
        .isInstanceOfSatisfying(
            InputRefused.class,
            e ->
                assertThat(e.lines())
                    .containsExactly(
                        "p.csv has no column 'x'; its columns are a, y, z: name the coordinates with --x and --y",
                        "p.csv: z is not a number in row 2 ('x')",
                        "p.csv has no column 'q'; its columns are a, y, z"));
    assertThatThrownBy(() -> read("x,y,z\n1,2,3\n1,,3\n", Missing.LEAVE_OUT, "z"))
        .hasMessage("p.csv: no coordinates in row 3; give them or leave the rows out");
    assertThatThrownBy(() -> read("x,y,z\n1,2,\n1,3,\n", Missing.LEAVE_OUT, "z"))
        .hasMessage("p.csv: the column z holds no value");
  }

  @Test
  void degreesAreRefused() {
    String file =
        TestFiles.write(
            folder,
            "d.geojson",
            "{\"type\":\"Feature\",\"properties\":{\"z\":1},\"geometry\":{\"type\":\"Point\",\"coordinates\":[-15,48]}}");
    assertThatThrownBy(() -> PointTableReader.read(file, "x", "y", List.of("z"), Missing.LEAVE_OUT))
        .hasMessage("d.geojson is in degrees (EPSG:4326 (WGS 84)); project it to metres first");
  }
}
