package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Variance of ordinary kriging at the centre of a cell of a grid, for design (McBratney & Webster
 * 1981, Computers & Geosciences 7, 331-334), computed with gstat 2.1.0 (R 4.2.2) for 2 nugget + 8
 * spherical of range 15; table named in cli/sources.txt.
 */
class EstimateGridSpacingTest {
  private static final NumberTable PUBLISHED = NumberTable.resource("grid_spacing_okvar.csv");

  @TempDir Path folder;

  @Test
  void squareOfSixteen() {
    for (int i = 0; i < PUBLISHED.size(); i++) {
      Path points = square(PUBLISHED.number(i, "spacing"), 4);
      assertVariance(i, "sq16_point", points, 1e-8);
      assertVariance(i, "sq16_block1m", points, 1e-6, "--block", "1x1");
    }
  }

  @Test
  void squareOfFour() {
    for (int i = 0; i < PUBLISHED.size(); i++) {
      assertVariance(i, "sq4_point", square(PUBLISHED.number(i, "spacing"), 2), 1e-8);
    }
  }

  /** The 18 points nearest to the middle of a triangle: whole shells, so no ties to break. */
  @Test
  void triangleOfEighteen() {
    for (int i = 0; i < PUBLISHED.size(); i++) {
      Path points = triangle(PUBLISHED.number(i, "tri_side_equal_area"));
      assertVariance(i, "tri18_point", points, 1e-8, "--neighbours", "18");
    }
  }

  private void assertVariance(
      int row, String column, Path points, double tolerance, String... options) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "estimate",
                "--points",
                points.toString(),
                "--value",
                "z",
                "--at",
                Models.text(folder, "at.csv", "x,y\n0,0\n").toString(),
                "--model",
                Models.write(folder, Models.json(2, "spherical", 8, 15)).toString(),
                "--quiet"));
    args.addAll(List.of(options));
    Ran ran = Ran.mottle(args);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    Close.relative(
        column + " at spacing " + PUBLISHED.text(row, "spacing"),
        NumberTable.of(ran.out()).number(0, "variance"),
        PUBLISHED.number(row, column),
        tolerance);
  }

  private Path square(double spacing, int side) {
    StringBuilder csv = new StringBuilder("x,y,z\n");
    for (int i = 0; i < side; i++) {
      for (int j = 0; j < side; j++) {
        double x = (i - (side - 1) / 2.0) * spacing;
        double y = (j - (side - 1) / 2.0) * spacing;
        csv.append(x).append(',').append(y).append(",0\n");
      }
    }
    return Models.text(folder, "square.csv", csv.toString());
  }

  private Path triangle(double side) {
    StringBuilder csv = new StringBuilder("x,y,z\n");
    for (int j = -6; j <= 6; j++) {
      for (int i = -6; i <= 6; i++) {
        double x = side * (i + j / 2.0 - 0.5);
        double y = side * Math.sqrt(3) * (j / 2.0 - 1 / 6.0);
        csv.append(x).append(',').append(y).append(",0\n");
      }
    }
    return Models.text(folder, "triangle.csv", csv.toString());
  }
}
