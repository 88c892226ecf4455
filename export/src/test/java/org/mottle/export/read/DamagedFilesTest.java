package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** Whatever happens to a file's bytes, it is read or refused in words; nothing else comes out. */
class DamagedFilesTest {
  private static final int TRIALS = 150;
  private static final InputOptions OPTIONS = InputOptions.NONE.withCrs(Crs.utm(28, true));

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "read/old_crs.geojson, geojson, 1",
    "read/course.gpkg, gpkg, 2",
    "read/shp/utf8.shp, shp, 3",
    "read/shp/utf8.dbf, dbf, 4",
    "crs/28992.prj, prj, 5",
    "validation/field/samples.csv, csv, 6"
  })
  void readOrRefused(String file, String ending, long seed) throws IOException {
    byte[] sound = Files.readAllBytes(TestFiles.resource(file));
    Random random = new Random(seed);
    boolean part = ending.equals("dbf") || ending.equals("prj");
    if (part) {
      Files.copy(TestFiles.resource("read/shp/utf8.shp"), folder.resolve("d.shp"));
    }
    String opened = folder.resolve("d." + (part ? "shp" : ending)).toString();
    // each description that still parses is looked up in the data set
    int trials = ending.equals("prj") ? TRIALS / 5 : TRIALS;
    int refused = 0;
    for (int trial = 0; trial < trials; trial++) {
      TestFiles.write(folder, "d." + ending, damaged(sound, random));
      try {
        FeatureFile.read(opened, OPTIONS, "green");
      } catch (InputRefused e) {
        refused++;
        assertThat(e.lines()).as("seed %d, trial %d", seed, trial).isNotEmpty();
        assertThat(e.getMessage()).doesNotContain("Exception");
      } catch (RuntimeException e) {
        throw new AssertionError("seed %d, trial %d".formatted(seed, trial), e);
      }
    }
    // a description that no longer fits gives way to the CRS given; a table of text survives most
    assertThat(refused).isGreaterThanOrEqualTo(ending.equals("prj") ? 0 : 1);
  }

  private static byte[] damaged(byte[] sound, Random random) {
    byte[] bytes = sound.clone();
    if (random.nextInt(4) == 0) {
      return Arrays.copyOf(bytes, 1 + random.nextInt(bytes.length));
    }
    int head = random.nextBoolean() ? Math.min(bytes.length, 512) : bytes.length;
    for (int i = 1 + random.nextInt(6); i > 0; i--) {
      bytes[random.nextInt(head)] = (byte) random.nextInt(256);
    }
    return bytes;
  }
}
