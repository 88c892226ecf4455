package org.mottle.export.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * An ESRI ASCII grid: a heading of words and numbers, then the cells from the north-west, row by
 * row; the corner is given as {@code xllcorner} (edge) or {@code xllcenter} (centre of the cell).
 * The reference system stands in a {@code .prj} beside it. Read as a stream: memory for one row.
 */
final class AsciiGridFile implements CellFile {
  private static final Set<String> KEYS =
      Set.of(
          "ncols",
          "nrows",
          "xllcorner",
          "xllcenter",
          "yllcorner",
          "yllcenter",
          "cellsize",
          "dx",
          "dy",
          "nodata_value");

  /** What the format says where a file says nothing. */
  private static final double NO_DATA = -9999;

  private final Path path;
  private final String name;
  private final CellFrame frame;
  private final double noData;
  private final Optional<Crs> crs;
  private final HeightFacts heights;
  private final List<String> notes;

  private AsciiGridFile(Path path, InputOptions options) throws IOException {
    this.path = path;
    this.name = path.getFileName().toString();
    Map<String, String> heading = heading();
    Problems problems = new Problems();
    this.frame = frame(heading, problems);
    this.noData =
        heading.containsKey("nodata_value") ? number(heading, "nodata_value", problems) : NO_DATA;
    List<String> found = new ArrayList<>();
    Optional<Crs> known = Optional.empty();
    try {
      known = PrjFile.crs(path, options, found);
    } catch (InputRefused e) {
      problems.add(e);
    }
    problems.throwIfAny();
    this.crs = known;
    this.heights = HeightFacts.ofText(PrjFile.text(path));
    this.notes = List.copyOf(found);
  }

  /**
   * @throws InputRefused with every problem of the heading
   */
  static AsciiGridFile open(Path path, InputOptions options) throws IOException {
    return new AsciiGridFile(path, options);
  }

  private Map<String, String> heading() throws IOException {
    Map<String, String> heading = new HashMap<>();
    try (InputStream in = Files.newInputStream(path)) {
      AsciiTokens tokens = new AsciiTokens(in);
      while (tokens.next() && isKey(tokens.text())) {
        String key = tokens.text().toLowerCase(Locale.ROOT);
        heading.put(key, tokens.next() ? tokens.text() : "");
      }
    }
    return heading;
  }

  private static boolean isKey(String word) {
    return KEYS.contains(word.toLowerCase(Locale.ROOT));
  }

  private CellFrame frame(Map<String, String> heading, Problems problems) {
    int columns = count(heading, "ncols", problems);
    int rows = count(heading, "nrows", problems);
    double cell = cell(heading, problems);
    double west = corner(heading, 'x', cell, problems);
    double south = corner(heading, 'y', cell, problems);
    problems.throwIfAny();
    return new CellFrame(west, south + rows * cell, cell, columns, rows);
  }

  private double cell(Map<String, String> heading, Problems problems) {
    if (heading.containsKey("cellsize") || !heading.containsKey("dx")) {
      double cell = number(heading, "cellsize", problems);
      problems.require(
          Double.isNaN(cell) || cell > 0 && Double.isFinite(cell),
          "%s: cellsize must be above 0, was %s; correct the heading",
          name,
          cell);
      return cell;
    }
    double dx = number(heading, "dx", problems);
    double dy = number(heading, "dy", problems);
    problems.require(
        Double.isNaN(dx) || Double.isNaN(dy) || dx > 0 && Math.abs(dx - dy) <= 1e-6 * dx,
        "%s: %s",
        name,
        GeoTiffFile.notSquare(dx, dy));
    return dx;
  }

  private double corner(Map<String, String> heading, char axis, double cell, Problems problems) {
    String centre = axis + "llcenter";
    boolean centred = heading.containsKey(centre);
    return centred
        ? number(heading, centre, problems) - cell / 2
        : number(heading, axis + "llcorner", problems);
  }

  private int count(Map<String, String> heading, String key, Problems problems) {
    double value = number(heading, key, problems);
    boolean fine = value >= 1 && value <= Integer.MAX_VALUE && value == Math.rint(value);
    problems.require(
        fine || Double.isNaN(value),
        "%s: %s must be a whole number above 0, was %s; correct the heading",
        name,
        key,
        heading.get(key));
    return fine ? (int) value : 1;
  }

  private double number(Map<String, String> heading, String key, Problems problems) {
    String text = heading.get(key);
    if (text == null) {
      problems.add("%s: the heading has no %s; write the grid again", name, key);
      return Double.NaN;
    }
    if (key.equals("nodata_value") && text.equalsIgnoreCase("nan")) {
      return Double.NaN;
    }
    if (text.isEmpty() || !Cells.isNumber(text, false) || Cells.isMissing(text)) {
      problems.add(
          "%s: %s is not a number, was '%s'; decimals have a point in this format",
          name, key, text);
      return Double.NaN;
    }
    return Double.parseDouble(text);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public CellFrame frame() {
    return frame;
  }

  @Override
  public Optional<Crs> crs() {
    return crs;
  }

  @Override
  public HeightFacts heights() {
    return heights;
  }

  @Override
  public List<String> notes() {
    return notes;
  }

  /** Every cell is read, wanted or not: a file cut off anywhere is told. */
  @Override
  public void read(Part part, RowSink sink) throws IOException {
    try (InputStream in = Files.newInputStream(path)) {
      AsciiTokens tokens = new AsciiTokens(in);
      boolean more = tokens.next();
      while (more && isKey(tokens.text())) {
        tokens.next();
        more = tokens.next();
      }
      cells(tokens, more, part, sink);
    }
  }

  private void cells(AsciiTokens tokens, boolean first, Part part, RowSink sink)
      throws IOException {
    double[] wanted = new double[part.columns()];
    List<String> wrong = new ArrayList<>();
    boolean more = first;
    for (int row = 0; row < frame.rows(); row++) {
      for (int column = 0; column < frame.columns(); column++) {
        if (!more) {
          throw endsEarly((long) row * frame.columns() + column);
        }
        double value = value(tokens, row, column, wrong);
        if (column >= part.firstColumn() && column < part.endColumn()) {
          wanted[column - part.firstColumn()] = value;
        }
        more = tokens.next();
      }
      if (row >= part.firstRow() && row < part.endRow()) {
        sink.row(row, wanted);
      }
    }
    Problems problems = new Problems();
    problems.require(
        wrong.isEmpty(),
        "%s: not a number in %s; decimals have a point in this format",
        name,
        Problems.listed(wrong, 4));
    problems.require(
        !more,
        "%s holds more than the %d x %d cells of its heading, '%s' comes next; write the grid again",
        name,
        frame.columns(),
        frame.rows(),
        tokens.text());
    problems.throwIfAny();
  }

  private double value(AsciiTokens tokens, int row, int column, List<String> wrong) {
    try {
      double value = tokens.number();
      return value == noData ? Double.NaN : value;
    } catch (NumberFormatException e) {
      if (wrong.size() < 1000) {
        wrong.add("row %d, column %d (%s)".formatted(row + 1, column + 1, e.getMessage()));
      }
      return Double.NaN;
    }
  }

  private InputRefused endsEarly(long values) {
    return new InputRefused(
        "%s ends after %d of its %d cells; copy or write it again"
            .formatted(name, values, (long) frame.columns() * frame.rows()));
  }
}
