package org.mottle.export.read;

import java.util.ArrayList;
import java.util.List;

/**
 * Splits separated text into records by RFC 4180: quotes round a field, doubled inside it; line
 * ends of any kind, also inside quotes. Remembers the line each record starts on.
 */
final class CsvText {
  private static final char[] SEPARATORS = {',', ';', '\t', '|'};

  /**
   * @param line of the file, from 1
   * @param closed false when a quote is never closed before the end
   */
  record Line(int line, List<String> fields, boolean closed) {}

  private final String text;
  private final char separator;
  private int at;
  private int line = 1;

  CsvText(String text, char separator) {
    this.text = text;
    this.separator = separator;
  }

  /** The separator that cuts the first line into most fields; on a tie the more usual one. */
  static char separatorOf(String text) {
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
  List<Line> lines() {
    List<Line> all = new ArrayList<>();
    while (at < text.length()) {
      Line next = next();
      if (next.fields().size() > 1 || !next.fields().get(0).isBlank()) {
        all.add(next);
      }
    }
    return all;
  }

  private Line next() {
    int start = line;
    List<String> fields = new ArrayList<>();
    boolean closed = true;
    while (true) {
      StringBuilder field = new StringBuilder();
      skipBlanksBeforeQuote();
      if (at < text.length() && text.charAt(at) == '"') {
        closed &= quoted(field);
      }
      while (at < text.length() && !isEnd(text.charAt(at))) {
        field.append(text.charAt(at++));
      }
      fields.add(field.toString().strip());
      if (at < text.length() && text.charAt(at) == separator) {
        at++;
        continue;
      }
      lineEnd();
      return new Line(start, fields, closed);
    }
  }

  private void skipBlanksBeforeQuote() {
    int peek = at;
    while (peek < text.length() && text.charAt(peek) == ' ') {
      peek++;
    }
    if (peek < text.length() && text.charAt(peek) == '"') {
      at = peek;
    }
  }

  private boolean quoted(StringBuilder field) {
    at++;
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c == '"') {
        if (at >= text.length() || text.charAt(at) != '"') {
          return true;
        }
        at++;
      } else if (c == '\n' || (c == '\r' && !(at < text.length() && text.charAt(at) == '\n'))) {
        line++;
      }
      field.append(c);
    }
    return false;
  }

  private boolean isEnd(char c) {
    return c == separator || c == '\n' || c == '\r';
  }

  private void lineEnd() {
    if (at >= text.length()) {
      return;
    }
    char c = text.charAt(at++);
    if (c == '\r' && at < text.length() && text.charAt(at) == '\n') {
      at++;
    }
    line++;
  }
}
