package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.Color;
import java.awt.Font;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.mottle.export.cli.Mottle;
import org.mottle.samples.picture.GreenMap;
import org.mottle.samples.picture.MapSheet;
import org.mottle.samples.picture.ZoneStyle;

class Sample05PictureTest {
  private static final Path COMMITTED = Path.of("../docs/images/map.png");
  private static Path delivered;

  @BeforeAll
  static void map() throws IOException {
    System.setProperty("java.awt.headless", "true");
    assumeTrue(fonts(), "a machine without fonts draws no text: install fontconfig and one font");
    delivered = TargetFolder.fresh("05").resolve("map");
    assertThat(Sample05Picture.map(delivered)).isZero();
  }

  private static boolean fonts() {
    try {
      return new Font(Font.SANS_SERIF, Font.PLAIN, 12).canDisplay('m');
    } catch (Error | RuntimeException e) {
      return false; // Java's own answer to a machine without any
    }
  }

  @Test
  void the_same_map_gives_the_same_bytes() throws IOException {
    Path one = delivered.resolveSibling("map.png");
    Path two = delivered.resolveSibling("map-again.png");
    Sample05Picture.draw(delivered, one);
    Sample05Picture.draw(delivered, two);
    assertThat(two).hasSameBinaryContentAs(one);
    assertThat(Files.size(one)).isLessThan(250_000);
  }

  /** Counting pixels of the plain class measures its area, less what is written over it. */
  @Test
  void a_metre_is_as_long_as_the_scale_bar_says() {
    GreenMap green = GreenMap.read(delivered, "G6", "S1");
    MapSheet sheet = new MapSheet(List.of(green), List.of());
    double perM2 = sheet.pixelsPerM() * sheet.pixelsPerM();
    double area = count(sheet.draw(), ZoneStyle.IN_BAND.fill()) / perM2;
    double inBand =
        green.zones().stream()
            .filter(zone -> zone.style() == ZoneStyle.IN_BAND)
            .mapToDouble(GreenMap.Zone::areaM2)
            .sum();
    assertThat(area).isCloseTo(inBand, within(0.1 * inBand));
  }

  @Test
  void classes_differ_in_lightness_or_pattern_too() {
    // after rain nothing of the course is dry: a survey of a dry day has it
    Path dryDay = delivered.resolveSibling("dry-day");
    assertThat(
            Mottle.run(
                "demo",
                "--survey",
                "S2",
                "--formats",
                "geopackage",
                "--cells",
                "--quiet",
                "--out",
                dryDay.toString()))
        .isZero();
    GreenMap green = GreenMap.read(dryDay, "G1", "S2");
    assertThat(green.zones()).anyMatch(zone -> zone.style() == ZoneStyle.DRY);
    BufferedImage image = new MapSheet(List.of(green), List.of()).draw();
    assertThat(count(image, ZoneStyle.DRY.fill())).isPositive();
    assertThat(count(image, new Color(0xa6611a))).as("dots of the dry pattern").isPositive();
  }

  @Test
  void the_committed_picture_is_of_this_kind() throws IOException {
    BufferedImage committed = ImageIO.read(COMMITTED.toFile());
    BufferedImage fresh =
        new MapSheet(
                List.of(GreenMap.read(delivered, "G3", "S1"), GreenMap.read(delivered, "G6", "S1")),
                List.of())
            .draw();
    assertThat(committed.getWidth()).isEqualTo(fresh.getWidth());
    assertThat(committed.getHeight()).isEqualTo(fresh.getHeight());
    assertThat(Files.size(COMMITTED)).isLessThan(250_000);
  }

  private static long count(BufferedImage image, Color colour) {
    long n = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        n += image.getRGB(x, y) == colour.getRGB() ? 1 : 0;
      }
    }
    return n;
  }
}
