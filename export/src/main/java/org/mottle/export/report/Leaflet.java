package org.mottle.export.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * The map library Leaflet, as it stands in its jar on the class path, to be written into a page.
 * Nothing in it is left to be fetched: the pointer to its source map and the pictures of its style
 * sheet, which the page does not use, are taken out.
 */
final class Leaflet {
  private static final String PLACE = "/META-INF/resources/webjars/leaflet/1.9.4/";

  private Leaflet() {}

  static String script() {
    return text(PLACE + "dist/leaflet.js").replaceAll("(?m)^//# sourceMappingURL=.*$", "").strip();
  }

  static String style() {
    return text(PLACE + "dist/leaflet.css")
        .replaceAll("url\\(images/[^)]*\\)", "none")
        .replaceAll("(?s)/\\*.*?\\*/", "")
        .replaceAll("(?m)^\\s*behavior:.*$", "");
  }

  static String licence() {
    return text(PLACE + "LICENSE");
  }

  /** A text on the class path. */
  static String text(String name) {
    try (InputStream in = Leaflet.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program is not whole: " + name + " is missing in it");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own " + name + " cannot be read", e);
    }
  }
}
