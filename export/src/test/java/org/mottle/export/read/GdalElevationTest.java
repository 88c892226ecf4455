package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.grid.Raster;
import org.mottle.export.problem.InputRefused;

/** What .ci/elevation.py wrote by GDAL; run by .ci/run, which has GDAL. */
@EnabledIfSystemProperty(named = "mottle.gdal.elevation", matches = ".+")
class GdalElevationTest {
  @TempDir Path folder;

  @Test
  void everyFileOfGdalIsReadToItsHeights() throws IOException {
    Greens greens =
        GreensReader.read(
            TestFiles.write(
                folder,
                "g.geojson",
                TestFiles.inUtm28(
                    TestFiles.greens("\"1\"", TestFiles.square(500008, 5315980, 15)))),
            InputOptions.NONE,
            Optional.empty());
    List<Path> files;
    try (Stream<Path> all = Files.list(Path.of(System.getProperty("mottle.gdal.elevation")))) {
      files = all.filter(f -> f.toString().matches(".*\\.(tif|asc)")).sorted().toList();
    }
    assertThat(files).hasSizeGreaterThan(100);
    SoftAssertions softly = new SoftAssertions();
    for (Path file : files) {
      softly.assertThatCode(() -> check(file, greens)).doesNotThrowAnyException();
    }
    softly.assertAll();
  }

  private static void check(Path file, Greens greens) {
    ElevationSource source;
    try {
      source =
          ElevationReader.read(
              List.of(file.toString()), InputOptions.NONE, ElevationOptions.DEFAULT, greens);
    } catch (InputRefused e) {
      assertThat(file.getFileName().toString())
          .as("%s", e.lines())
          .matches("(msb_f.*_3|refused_.*).tif");
      return;
    }
    assertThat(file.getFileName().toString()).doesNotMatch("(msb_f.*_3|refused_.*).tif");
    check(file, source.near(greens.greens().get(0)).orElseThrow().raster());
  }

  private static void check(Path file, Raster raster) {
    String name = file.getFileName().toString();
    assertThat(raster.grid().columns()).as(name).isEqualTo(70);
    assertThat(raster.grid().rows()).as(name).isEqualTo(50);
    assertThat(raster.grid().west()).as(name).isCloseTo(500000, within(1e-6));
    assertThat(raster.grid().north()).as(name).isCloseTo(5316000, within(1e-6));
    boolean whole = name.matches(".*_i(16|32)_.*");
    for (int row = 0; row < 50; row++) {
      for (int column = 0; column < 70; column++) {
        double height = 40 + column / 64.0 - row / 128.0;
        double wanted = row == 3 && column == 5 ? Double.NaN : whole ? Math.floor(height) : height;
        assertThat(raster.value(row, column))
            .as("%s, row %d, column %d", name, row, column)
            .satisfies(
                v -> {
                  if (Double.isNaN(wanted)) {
                    assertThat(v).isNaN();
                  } else {
                    assertThat(v).isCloseTo(wanted, within(1e-6));
                  }
                });
      }
    }
  }
}
