package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;

/** What the libraries under the readers have to say does not reach the user's console. */
class QuietConsoleTest {

  /** Run in a process of its own: SQLite, the EPSG data set, a datum shift. */
  static final class Field {
    private Field() {}

    public static void main(String[] args) {
      Greens greens = GreensReader.read(args[0], InputOptions.NONE, Optional.empty());
      CrsTransform toDegrees = CrsTransform.between(greens.working(), Crs.wgs84());
      // far outside: a library is tempted to warn
      toDegrees.problemAt(9e6, 9e6);
      Crs.ofEpsg(27700).geotools();
      System.out.println(greens.greens().size());
    }
  }

  @Test
  void onlyOurOwnLineIsPrinted() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp",
                    System.getProperty("java.class.path"),
                    Field.class.getName(),
                    TestFiles.path("validation/field/outline.gpkg")))
            .redirectErrorStream(true)
            .start();
    List<String> lines = process.inputReader().lines().toList();
    assertThat(process.waitFor()).isZero();
    assertThat(lines).containsExactly("1");
  }
}
