package org.mottle.export.crs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One element of a well-known text: KEYWORD["name", 1.5, CHILD[...], ...]. Reads both generations
 * of the notation (and both kinds of bracket) without knowing what the keywords mean.
 *
 * @param keyword upper case
 * @param values quoted texts, numbers and bare words in order, quotes removed
 * @param children nested elements in order
 */
record WktNode(String keyword, List<String> values, List<WktNode> children) {

  static WktNode parse(String text) {
    Scanner scanner = new Scanner(text);
    WktNode node = scanner.node();
    scanner.end();
    return node;
  }

  String name() {
    return values.isEmpty() ? "" : values.get(0);
  }

  double number(int index) {
    if (index >= values.size()) {
      throw new IllegalArgumentException(keyword + " lacks its value number " + (index + 1));
    }
    return Double.parseDouble(values.get(index));
  }

  Optional<WktNode> child(String... keywords) {
    return children.stream().filter(c -> List.of(keywords).contains(c.keyword)).findFirst();
  }

  List<WktNode> children(String wanted) {
    return children.stream().filter(c -> c.keyword.equals(wanted)).toList();
  }

  /** First element with one of the keywords, itself included, depth first. */
  Optional<WktNode> find(String... keywords) {
    if (List.of(keywords).contains(keyword)) {
      return Optional.of(this);
    }
    return children.stream().flatMap(c -> c.find(keywords).stream()).findFirst();
  }

  /** The EPSG code the element itself carries. */
  Optional<Integer> epsg() {
    return child("AUTHORITY", "ID")
        .filter(a -> a.values.size() >= 2 && a.name().equalsIgnoreCase("EPSG"))
        .filter(a -> a.values.get(1).matches("\\d{1,9}"))
        .map(a -> Integer.valueOf(a.values.get(1)));
  }

  /** Letters and digits only, lower case, without a leading "D_" or "GCS_": names to compare. */
  static String plain(String name) {
    String bare = name.toLowerCase(Locale.ROOT).replaceFirst("^(d|gcs)_", "");
    return bare.replaceAll("[^a-z0-9]", "").replaceFirst("(?<=.)ensemble$", "");
  }

  private static final class Scanner {
    private final String text;
    private int at;

    Scanner(String text) {
      this.text = text;
    }

    WktNode node() {
      String keyword = word().toUpperCase(Locale.ROOT);
      skip();
      char open = at < text.length() ? text.charAt(at) : ' ';
      if (keyword.isEmpty() || (open != '[' && open != '(')) {
        throw broken("expected KEYWORD[");
      }
      char close = open == '[' ? ']' : ')';
      at++;
      List<String> values = new ArrayList<>();
      List<WktNode> children = new ArrayList<>();
      while (true) {
        item(values, children);
        skip();
        char c = at < text.length() ? text.charAt(at) : ' ';
        at++;
        if (c == close) {
          return new WktNode(keyword, List.copyOf(values), List.copyOf(children));
        }
        if (c != ',') {
          at--;
          throw broken("expected , or " + close);
        }
      }
    }

    private void item(List<String> values, List<WktNode> children) {
      skip();
      if (at < text.length() && text.charAt(at) == '"') {
        values.add(quoted());
        return;
      }
      int start = at;
      String word = word();
      skip();
      if (at < text.length() && (text.charAt(at) == '[' || text.charAt(at) == '(')) {
        at = start;
        children.add(node());
      } else if (word.isEmpty()) {
        throw broken("expected a value");
      } else {
        values.add(word);
      }
    }

    private String quoted() {
      StringBuilder b = new StringBuilder();
      for (at++; at < text.length(); at++) {
        char c = text.charAt(at);
        if (c == '"') {
          if (at + 1 < text.length() && text.charAt(at + 1) == '"') {
            at++;
          } else {
            at++;
            return b.toString();
          }
        }
        b.append(c);
      }
      throw broken("a quote is never closed");
    }

    private String word() {
      skip();
      int start = at;
      while (at < text.length() && "[](),\" \t\r\n".indexOf(text.charAt(at)) < 0) {
        at++;
      }
      return text.substring(start, at);
    }

    private void skip() {
      while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
        at++;
      }
    }

    void end() {
      skip();
      if (at < text.length()) {
        throw broken("text goes on after the end");
      }
    }

    private IllegalArgumentException broken(String what) {
      return new IllegalArgumentException(what + " at character " + (at + 1));
    }
  }
}
