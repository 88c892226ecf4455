package org.mottle.export.write;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A file of a delivery beside its layers and rasters: a page, a table, tracks for a receiver. It is
 * written aside, listed with its SHA-256 and moved into place with the rest.
 *
 * @param path relative to the delivered folder, with {@code /}; its first part is one of the places
 *     the delivery was told of
 * @param body what writes it
 */
public record Document(String path, Body body) {

  /** Writes one file from start to end, the same bytes every time. */
  @FunctionalInterface
  public interface Body {
    void write(Path file) throws IOException;
  }

  public Document {
    if (path.isBlank() || path.startsWith("/") || path.contains("..") || path.contains("\\")) {
      throw new IllegalArgumentException(
          "a document needs a path inside the delivery, was '" + path + "'");
    }
  }

  /** Text in UTF-8. */
  public static Document text(String path, String text) {
    return new Document(path, file -> Files.writeString(file, text, StandardCharsets.UTF_8));
  }

  /** The file or folder at the top of the delivery. */
  String place() {
    return path.contains("/") ? path.substring(0, path.indexOf('/')) : path;
  }
}
