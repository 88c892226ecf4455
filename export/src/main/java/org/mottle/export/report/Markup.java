package org.mottle.export.report;

/** Text as HTML and SVG want it. */
public final class Markup {
  private Markup() {}

  public static String text(String raw) {
    StringBuilder safe = new StringBuilder(raw.length());
    for (int i = 0; i < raw.length(); i++) {
      char c = raw.charAt(i);
      switch (c) {
        case '&' -> safe.append("&amp;");
        case '<' -> safe.append("&lt;");
        case '>' -> safe.append("&gt;");
        case '"' -> safe.append("&quot;");
        default -> safe.append(c < ' ' ? ' ' : c);
      }
    }
    return safe.toString();
  }
}
