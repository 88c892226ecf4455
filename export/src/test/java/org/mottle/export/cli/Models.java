package org.mottle.export.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Model files for {@code --model}, in the documented form. */
final class Models {

  private Models() {}

  static String json(double nugget, String type, double partialSill, double range) {
    return json(nugget, type, partialSill, range, 0, 1);
  }

  static String json(
      double nugget, String type, double partialSill, double range, double azimuth, double ratio) {
    return String.format(
        Locale.ROOT,
        "{\"nugget\": %s, \"structures\": [{\"type\": \"%s\", \"partial_sill\": %s, \"range\": %s,"
            + " \"azimuth\": %s, \"ratio\": %s}]}",
        nugget,
        type,
        partialSill,
        range,
        azimuth,
        ratio);
  }

  static Path write(Path folder, String json) {
    return text(folder, "model.json", json);
  }

  /** A file with this text, replaced if it is there. */
  static Path text(Path folder, String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
