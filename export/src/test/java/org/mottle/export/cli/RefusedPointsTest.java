package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables of points that cannot be used: one clear line, exit code 2, nothing written. */
class RefusedPointsTest {
  private static final String GOOD = "x,y,z\n0,0,1\n10,0,2\n0,10,3\n10,10,5\n";

  @TempDir Path folder;

  @Test
  void missingFile() {
    assertThat(refused(folder.resolve("nowhere.csv"), "z")).contains("nowhere.csv", "no such file");
  }

  @Test
  void emptyFile() {
    assertThat(refused("", "z")).contains("p.csv is empty");
  }

  @Test
  void headingsAlone() {
    assertThat(refused("x,y,z\n", "z")).contains("p.csv", "no rows");
  }

  @Test
  void wrongColumn() {
    assertThat(refused(GOOD, "zz")).contains("p.csv", "'zz'", "x, y, z");
  }

  @Test
  void wrongColumnOfCoordinates() {
    assertThat(refused("east,y,z\n0,0,1\n1,2,3\n", "z"))
        .contains("'x'", "east, y, z", "--x and --y");
  }

  @Test
  void textInAColumnOfNumbers() {
    assertThat(refused("x,y,z\n0,0,1\n10,0,wet\n0,10,3\n5,5,dry\n", "z"))
        .contains("p.csv", "z is not a number", "3 ('wet')", "5 ('dry')");
  }

  @Test
  void placesWithoutCoordinates() {
    assertThat(refused("x,y,z\n0,0,1\n,0,2\n0,NaN,3\n4,4,4\n", "z"))
        .contains("p.csv", "no coordinates", "3, 4");
  }

  @Test
  void noValueAtAll() {
    assertThat(refused("x,y,z\n0,0,NaN\n1,0,\n", "z")).contains("p.csv", "z holds no value");
  }

  @Test
  void truncatedWithinARow() {
    assertThat(refused("x,y,z\n0,0,1\n10,0,2\n0,1", "z")).contains("p.csv", "4 (2)");
  }

  @Test
  void truncatedWithinAQuote() {
    assertThat(refused("x,y,z\n0,0,1\n10,0,\"2", "z")).contains("p.csv, row 3", "quote");
  }

  @Test
  void onePoint() {
    assertThat(refused("x,y,z\n0,0,1\n", "z")).contains("p.csv", "1 point is too few");
  }

  @Test
  void pointsThatShareAPlace() {
    assertThat(refused("x,y,z\n0,0,1\n10,0,2\n0,10,3\n10,0,4\n", "z"))
        .contains("rows 3 and 5", "E 10.00 N 0.00", "2.0 and 4.0", "--duplicates average");
  }

  @Test
  void logarithmOfNothing() {
    assertThat(refused("x,y,z\n0,0,1\n10,0,0\n0,10,-3\n", "z", "--log"))
        .contains("p.csv", "--log", "3, 4");
  }

  /** A few greens in degrees would all lie within 10 cm, were they metres. */
  @Test
  void degreesTakenForMetres() {
    assertThat(refused("x,y,z\n-1.5012,52.1003,3\n-1.5013,52.1002,4\n-1.5003,52.101,5\n", "z"))
        .contains("p.csv", "degrees, not metres", "-1.5013 to -1.5003", "52.1002 to 52.101");
  }

  @Test
  void columnsOfDegreesNamedByTheirHeading() {
    String csv = "lon,lat,z\n-1.5,52.1,3\n2.5,48.2,4\n11.3,47.1,5\n";
    assertThat(refused(csv, "z", "--x", "lon", "--y", "lat")).contains("degrees, not metres");
  }

  @Test
  void geoJsonInDegrees() {
    String point = "{\"type\":\"Feature\",\"properties\":{\"z\":%d},\"geometry\":";
    String place = "{\"type\":\"Point\",\"coordinates\":[%s]}}";
    String json =
        "{\"type\":\"FeatureCollection\",\"features\":["
            + point.formatted(1)
            + place.formatted("-1.5,52.1")
            + ","
            + point.formatted(2)
            + place.formatted("-1.6,52.2")
            + "]}";
    Path file = Models.text(folder, "p.geojson", json);
    assertThat(refused(file, "z")).contains("p.geojson is in degrees", "metres");
  }

  /** A variogram of equal values has no model; kriging gives the value back. */
  @Test
  void allValuesEqual() {
    Path file = Models.text(folder, "p.csv", "x,y,z\n0,0,3\n10,0,3\n0,10,3\n10,10,3\n");
    assertThat(onlyLine(variogram(file, "z")))
        .contains("p.csv: all 4 values of z are 3.0", "values that differ");
    Ran estimated = shown(file, "z", "--quiet");
    assertThat(estimated.exitCode()).as(estimated.err()).isEqualTo(ExitCode.DONE);
    assertThat(NumberTable.of(estimated.out()).number(0, "estimate")).isEqualTo(3);
  }

  /** On one line a plane cannot be told from a tilt across it; without a plane all is well. */
  @Test
  void pointsOnALineWithAPlaneForDrift() {
    Path file = Models.text(folder, "p.csv", "x,y,z\n1,1,3\n2,2,4\n3,3,5\n4,4,3\n5,5,6\n");
    String[] plane = {"--method", "universal-kriging", "--drift", "x,y"};
    assertThat(onlyLine(estimate(file, "z", plane))).contains("p.csv", "drift");
    String[] leaveOneOut = {"--method", "universal-kriging", "--drift", "x,y", "--leave-one-out"};
    assertThat(onlyLine(estimate(file, "z", leaveOneOut))).contains("p.csv", "drift");
    assertThat(shown(file, "z").exitCode()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void tooFewPointsForTheDrift() {
    Path file = Models.text(folder, "p.csv", "x,y,z\n1,1,3\n2,5,4\n");
    String[] plane = {"--method", "universal-kriging", "--drift", "x,y"};
    assertThat(onlyLine(estimate(file, "z", plane))).contains("2 observations", "3 terms");
  }

  @ParameterizedTest
  @ValueSource(strings = {"average", "keep-first"})
  void placesSharedAreSettledWhenTold(String policy) {
    Path file = Models.text(folder, "p.csv", "x,y,z\n0,0,1\n10,0,2\n0,10,3\n10,0,4\n");
    Ran ran = shown(file, "z", "--duplicates", policy);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).contains("1 points that share a place");
  }

  /** Of a missing value the row is named, and the rest is used. */
  @Test
  void missingValuesAreTold() {
    Path file = Models.text(folder, "p.csv", "x,y,z\n0,0,1\n10,0,NaN\n0,10,3\n10,10,5\n");
    Ran ran = shown(file, "z");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).contains("no value of z in row 3, left out");
  }

  private String refused(String csv, String value, String... options) {
    return refused(Models.text(folder, "p.csv", csv), value, options);
  }

  /** The one line on stderr, the same for both commands. */
  private String refused(Path points, String value, String... options) {
    String line = onlyLine(variogram(points, value, options));
    assertThat(onlyLine(estimate(points, value, options))).isEqualTo(line);
    return line;
  }

  private String onlyLine(Ran ran) {
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.errLines()).hasSize(1);
    assertThat(folder.toFile().list()).isSubsetOf("p.csv", "p.geojson", "at.csv", "model.json");
    return ran.err().strip();
  }

  private Ran variogram(Path points, String value, String... options) {
    String out = folder.resolve("v.json").toString();
    return Ran.mottle(args(List.of("variogram", "--quiet", "--out", out), points, value, options));
  }

  /** Quiet, and into a file. */
  private Ran estimate(Path points, String value, String... options) {
    List<String> more = new ArrayList<>(List.of(options));
    more.addAll(List.of("--quiet", "--out", folder.resolve("e.csv").toString()));
    return shown(points, value, more.toArray(String[]::new));
  }

  private Ran shown(Path points, String value, String... options) {
    String at = Models.text(folder, "at.csv", "x,y\n3,4\n").toString();
    String model = Models.write(folder, Models.json(0.1, "spherical", 1, 20)).toString();
    return Ran.mottle(
        args(List.of("estimate", "--at", at, "--model", model), points, value, options));
  }

  private static List<String> args(
      List<String> command, Path points, String value, String... options) {
    List<String> args = new ArrayList<>(command);
    args.addAll(List.of("--points", points.toString(), "--value", value));
    args.addAll(List.of(options));
    return args;
  }
}
