package org.mottle.export.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Separated text with a line of headings, split by Jackson. Encoding, separator and decimal comma
 * are detected and told. Positions come from columns {@code x, y} (or {@code easting, northing}) in
 * a given CRS, or {@code lon, lat}, which are WGS 84 by their names unless another CRS is given.
 */
final class CsvReader {
  private static final Pattern COMMA_NUMBER = Pattern.compile("[-+]?\\d+,\\d+([eE][-+]?\\d+)?");
  private static final Pattern POINT_NUMBER = Pattern.compile("[-+]?\\d*\\.\\d+([eE][-+]?\\d+)?");
  private static final Map<Character, String> SEPARATOR_NAMES =
      Map.of(',', "comma", ';', "semicolon", '\t', "tab", '|', "bar");
  private static final int SHOWN = 10;

  private final Path path;
  private final String name;
  private final InputOptions options;
  private final Problems problems = new Problems();
  private final List<String> notes = new ArrayList<>();

  CsvReader(Path path, InputOptions options) {
    this.path = path;
    this.name = path.getFileName().toString();
    this.options = options;
  }

  FeatureTable read(Positions positions) throws IOException {
    FeatureTable table = readCells();
    return new CsvPositions(table, options, positions).apply();
  }

  /** The table without positions. */
  FeatureTable readCells() throws IOException {
    TextEncoding encoding = TextEncoding.detect(Files.readAllBytes(path));
    String text = encoding.text();
    if (text.indexOf('\0') >= 0) {
      throw new InputRefused("%s is not a text file; give CSV".formatted(name));
    }
    char separator = CsvText.separatorOf(text);
    if (text.startsWith("sep=") && text.length() > 4) {
      // a spreadsheet's own way to name the separator
      separator = text.charAt(4);
      text = text.substring(5);
    }
    List<CsvText.Line> lines = new CsvText(text, separator).lines();
    if (lines.isEmpty()) {
      throw new InputRefused("%s is empty".formatted(name));
    }
    CsvText.Line first = lines.get(0);
    if (first.quotes() != CsvText.Quotes.SOUND) {
      throw new InputRefused("%s, row %d: %s".formatted(name, first.line(), fault(first.quotes())));
    }
    List<String> headings = headings(first.fields());
    List<FeatureTable.Row> rows = rows(lines, headings.size());
    problems.throwIfAny();
    boolean comma = decimalComma(rows);
    notes.add(
        "%s: %s, %s-separated, decimal %s"
            .formatted(
                name,
                encoding.name(),
                SEPARATOR_NAMES.getOrDefault(separator, "'" + separator + "'"),
                comma ? "comma" : "point"));
    return new FeatureTable(
        new FeatureTable.Origin(name, "row", comma), headings, rows, Optional.empty(), notes);
  }

  private List<String> headings(List<String> fields) {
    List<String> headings = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < fields.size(); i++) {
      String heading = fields.get(i).isEmpty() ? "column " + (i + 1) : fields.get(i);
      headings.add(heading);
      problems.require(
          seen.add(heading), "%s: the heading '%s' stands twice; rename one", name, heading);
    }
    if (fields.stream().allMatch(f -> Cells.isNumber(f, true))) {
      problems.add(
          "%s: the first row holds numbers ('%s'); put a row of headings above it",
          name, String.join("', '", fields));
    }
    return headings;
  }

  private List<FeatureTable.Row> rows(List<CsvText.Line> lines, int width) {
    List<FeatureTable.Row> rows = new ArrayList<>();
    List<String> uneven = new ArrayList<>();
    for (CsvText.Line line : lines.subList(1, lines.size())) {
      List<String> fields = line.fields();
      if (line.quotes() != CsvText.Quotes.SOUND) {
        problems.add("%s, row %d: %s", name, line.line(), fault(line.quotes()));
      } else if (fields.size() < width
          || fields.subList(width, fields.size()).stream().anyMatch(f -> !f.isEmpty())) {
        uneven.add("%d (%d)".formatted(line.line(), fields.size()));
      } else {
        rows.add(new FeatureTable.Row(line.line(), null, List.copyOf(fields.subList(0, width))));
      }
    }
    problems.require(
        uneven.isEmpty(),
        "%s: the heading has %d fields, but not row %s; quote fields that hold the separator",
        name,
        width,
        Problems.listed(uneven, SHOWN));
    problems.require(lines.size() > 1, "%s has headings but no rows", name);
    return rows;
  }

  private static String fault(CsvText.Quotes quotes) {
    return quotes == CsvText.Quotes.NEVER_CLOSED
        ? "a quote is opened and never closed"
        : "more follows after a closing quote; write a quote inside a field twice";
  }

  /** True when numbers with a comma occur and none with a point. */
  private static boolean decimalComma(List<FeatureTable.Row> rows) {
    boolean comma = false;
    for (FeatureTable.Row row : rows) {
      for (Object cell : row.values()) {
        String field = (String) cell;
        if (POINT_NUMBER.matcher(field).matches()) {
          return false;
        }
        comma |= COMMA_NUMBER.matcher(field).matches();
      }
    }
    return comma;
  }
}
