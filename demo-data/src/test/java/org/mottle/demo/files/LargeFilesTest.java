package org.mottle.demo.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Head;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Elevation;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Season;

class LargeFilesTest {

  @TempDir static Path folder;
  private static Season season;

  @BeforeAll
  static void write() throws IOException {
    season = new Season(20250514);
    CourseFolder.writeLarge(season, folder);
  }

  @Test
  void elevationIsTheTruthWithEightMillimetresOfNoise() throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve("dem_G6.asc"));
    GreenSite green = CoursePlace.green("G6");
    Elevation truth = new Elevation(green);
    Point centre = green.world(0, 0);
    double west = header(lines, 2) - centre.x();
    double south = header(lines, 3) - centre.y();
    int rows = (int) header(lines, 1);
    assertThat(header(lines, 4)).isEqualTo(0.25);
    assertThat(west).isLessThan(green.ring().minX() - 34.7);
    double sum = 0;
    double squares = 0;
    int n = 0;
    for (int row = 0; row < rows; row++) {
      String[] values = lines.get(6 + row).split(" ");
      assertThat(values).hasSize((int) header(lines, 0));
      for (int column = 0; column < values.length; column += 5) {
        double x = west + (column + 0.5) * 0.25;
        double y = south + (rows - row - 0.5) * 0.25;
        double e = Double.parseDouble(values[column]) - truth.at(x, y);
        sum += e;
        squares += e * e;
        n++;
      }
    }
    assertThat(sum / n).isCloseTo(0, within(0.0005));
    assertThat(Math.sqrt(squares / n)).isCloseTo(0.008, within(0.0003));
    assertThat(folder.resolve("dem_G6.prj")).content().contains("Central_Meridian\",-15.0");
  }

  @Test
  void theOrthophotoIsShiftedToTheEastAndSouth() throws IOException {
    GreenSite green = CoursePlace.green("G4");
    BufferedImage image = ImageIO.read(folder.resolve("ortho_G4.png").toFile());
    List<String> world = Files.readAllLines(folder.resolve("ortho_G4.pgw"));
    assertThat(world.get(0)).isEqualTo("0.10");
    for (Head head : Head.of(green)) {
      Point shown = green.world(head.place()).plus(0.6, -0.4);
      assertThat(brightness(image, world, shown)).as(head.id() + " where shown").isLessThan(60);
      assertThat(brightness(image, world, green.world(head.place())))
          .as(head.id() + " where it is")
          .isGreaterThan(60);
    }
  }

  @Test
  void truthRastersHoldTheTrueMoistureInsideTheGreen() throws IOException {
    GreenSite green = CoursePlace.green("G3");
    List<String> lines = Files.readAllLines(folder.resolve("truth/vwc_G3_S2.asc"));
    Point centre = green.world(0, 0);
    int rows = (int) header(lines, 1);
    int inside = 0;
    for (int row = 0; row < rows; row++) {
      String[] values = lines.get(6 + row).split(" ");
      for (int column = 0; column < values.length; column++) {
        double x = header(lines, 2) + (column + 0.5) * 0.5 - centre.x();
        double y = header(lines, 3) + (rows - row - 0.5) * 0.5 - centre.y();
        double value = Double.parseDouble(values[column]);
        if (value != -9999) {
          inside++;
          assertThat(value).isCloseTo(season.truth("G3").soilPct(Survey.S2, x, y), within(0.006));
        }
      }
    }
    assertThat(inside).isEqualTo(green.cells(0.5).size());
    assertThat(folder.resolve("truth/fault_G3.asc")).exists();
    assertThat(folder.resolve("truth/parameters.json")).content().contains("\"micro_nugget\"");
    assertThat(folder.resolve("truth/defects.csv")).content().contains("D15,S1,G3");
    assertThat(Files.readAllLines(folder.resolve("truth/shifts.csv"))).hasSize(1 + 6 * 9 + 2);
  }

  private static double header(List<String> lines, int line) {
    return Double.parseDouble(lines.get(line).split(" ")[1]);
  }

  private static int brightness(BufferedImage image, List<String> world, Point p) {
    int column = (int) Math.round((p.x() - Double.parseDouble(world.get(4))) / 0.1);
    int row = (int) Math.round((Double.parseDouble(world.get(5)) - p.y()) / 0.1);
    int rgb = image.getRGB(column, row);
    return ((rgb >> 16 & 0xff) + (rgb >> 8 & 0xff) + (rgb & 0xff)) / 3;
  }
}
