package org.mottle.export.read;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Splits separated text into records by Jackson's CSV parser: quotes round a field, doubled inside
 * it; line ends of any kind, also inside quotes. Remembers the line each record starts on.
 *
 * <p>Ours is the choice of the separator, which the parser has to be told, and how it goes on at
 * the next line where something follows a closing quote: the parser ends there, and the other rows
 * with faults would not be told.
 */
final class CsvText {
  private static final char[] SEPARATORS = {',', ';', '\t', '|'};
  private static final CsvFactory FACTORY =
      CsvFactory.builder().enable(CsvParser.Feature.TRIM_SPACES).build();

  /** How a record's quotes stand. */
  enum Quotes {
    SOUND,
    NEVER_CLOSED,
    /** Something other than a separator or the end of the line follows a closing quote. */
    CLOSED_EARLY
  }

  /**
   * @param line of the file, from 1
   * @param fields without blanks round them; the one with unsound quotes is empty and the last
   */
  record Line(int line, List<String> fields, Quotes quotes) {}

  private final char[] text;
  private final CsvSchema schema;
  private final List<Line> lines = new ArrayList<>();

  CsvText(String text, char separator) {
    this.text = text.toCharArray();
    this.schema = CsvSchema.emptySchema().withColumnSeparator(separator);
  }

  /** The separator that cuts the first line into most fields; on a tie the more usual one. */
  static char separatorOf(String text) throws IOException {
    String head = text.lines().filter(l -> !l.isBlank()).findFirst().orElse("");
    char best = ',';
    int most = 1;
    for (char candidate : SEPARATORS) {
      List<Line> first = new CsvText(head, candidate).lines();
      int fields = first.isEmpty() ? 0 : first.get(0).fields().size();
      if (fields > most) {
        most = fields;
        best = candidate;
      }
    }
    return best;
  }

  /** All records; blank lines are left out. */
  List<Line> lines() throws IOException {
    int from = 0;
    int line = 1;
    while (from < text.length) {
      try (CsvParser parser = FACTORY.createParser(text, from, text.length - from)) {
        parser.setSchema(schema);
        Optional<JsonLocation> stop = read(parser, line - 1);
        if (stop.isEmpty()) {
          break;
        }
        line += stop.get().getLineNr();
        from = nextLine(from + (int) stop.get().getCharOffset());
      }
    }
    return lines;
  }

  /** Where the parser ended before the end of the text, if it did. */
  private Optional<JsonLocation> read(CsvParser parser, int linesBefore) throws IOException {
    List<String> fields = new ArrayList<>();
    int line = linesBefore;
    try {
      for (JsonToken t = parser.nextToken(); t != null; t = parser.nextToken()) {
        if (t == JsonToken.VALUE_STRING) {
          line = fields.isEmpty() ? linesBefore + lineOf(parser) : line;
          fields.add(parser.getText().strip());
        } else if (t == JsonToken.END_ARRAY) {
          add(new Line(line, fields, Quotes.SOUND));
          fields = new ArrayList<>();
        }
      }
      return Optional.empty();
    } catch (JsonParseException e) {
      line = fields.isEmpty() ? linesBefore + lineOf(parser) : line;
      // the parser has one exception for both
      boolean open = e.getOriginalMessage().startsWith("Missing closing quote");
      fields.add("");
      lines.add(new Line(line, fields, open ? Quotes.NEVER_CLOSED : Quotes.CLOSED_EARLY));
      return open ? Optional.empty() : Optional.of(parser.currentLocation());
    }
  }

  private static int lineOf(CsvParser parser) {
    return parser.currentTokenLocation().getLineNr();
  }

  private void add(Line line) {
    if (line.fields().size() > 1 || !line.fields().get(0).isEmpty()) {
      lines.add(line);
    }
  }

  /** Start of the line after the one that holds a place. */
  private int nextLine(int place) {
    int at = place;
    while (at < text.length && text[at] != '\n' && text[at] != '\r') {
      at++;
    }
    boolean two = at + 1 < text.length && text[at] == '\r' && text[at + 1] == '\n';
    return at + (two ? 2 : 1);
  }
}
