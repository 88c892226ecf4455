package org.mottle.export.read;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.localgrid.PointPair;
import org.mottle.export.problem.Problems;

/**
 * Reads points known in two systems from a table: {@code name, e, n} in metres of the survey's CRS,
 * and two more columns for the other system.
 */
public final class PointPairsReader {
  private static final List<String> FROM = List.of("name", "e", "n");

  private PointPairsReader() {}

  /** Controls of a local grid: {@code name, e, n, local_e, local_n}. */
  public static List<PointPair> controls(String file) {
    return read(file, "local_e", "local_n");
  }

  /** Marks seen in an image: {@code name, e, n, image_e, image_n}, both in the survey's CRS. */
  public static List<PointPair> marks(String file) {
    return read(file, "image_e", "image_n");
  }

  /**
   * @throws org.mottle.export.problem.InputRefused with every problem of the file
   */
  private static List<PointPair> read(String file, String toE, String toN) {
    FeatureTable table = FeatureFile.readCells(file, InputOptions.NONE);
    Problems problems = new Problems();
    Columns columns = new Columns(table, InputOptions.NONE, problems);
    List<String> wanted = new ArrayList<>(FROM);
    wanted.addAll(List.of(toE, toN));
    for (String column : wanted) {
      problems.require(
          columns.find(column).isPresent(),
          "%s has no column %s; it needs %s, its columns are %s",
          table.name(),
          column,
          String.join(", ", wanted),
          columns.named());
    }
    problems.throwIfAny();
    String[] names = columns.texts("name");
    List<double[]> numbers = wanted.stream().skip(1).map(columns::numbers).toList();
    problems.throwIfAny();
    List<PointPair> pairs = new ArrayList<>();
    for (int i = 0; i < names.length; i++) {
      String at = table.at(table.rows().get(i));
      int row = i;
      boolean whole = numbers.stream().noneMatch(n -> Double.isNaN(n[row]));
      problems.require(!names[i].isEmpty(), "%s: the point has no name", at);
      problems.require(whole, "%s: a coordinate is missing; give it or drop the row", at);
      if (whole) {
        pairs.add(
            new PointPair(
                names[i],
                new Coordinate(numbers.get(0)[i], numbers.get(1)[i]),
                new Coordinate(numbers.get(2)[i], numbers.get(3)[i])));
      }
    }
    problems.throwIfAny();
    return pairs;
  }
}
