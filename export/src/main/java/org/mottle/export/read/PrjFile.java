package org.mottle.export.read;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** The description of a reference system in a {@code .prj} beside a file. */
final class PrjFile {
  private PrjFile() {}

  /** The file of the same stem with another ending, which may be spelled in capitals. */
  static Optional<Path> sibling(Path path, String ending) throws IOException {
    String name = path.getFileName().toString();
    String stem = name.substring(0, name.lastIndexOf('.') + 1);
    Path folder = path.toAbsolutePath().getParent();
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.getFileName().toString().equalsIgnoreCase(stem + ending))
          .filter(f -> f.getFileName().toString().startsWith(stem))
          .findFirst();
    }
  }

  /** Its text; empty without such a file. */
  static String text(Path path) throws IOException {
    Optional<Path> prj = sibling(path, "prj");
    return prj.isPresent() ? Files.readString(prj.get(), StandardCharsets.ISO_8859_1).strip() : "";
  }

  /** What it says, else the system the user gave; empty when there is neither. */
  static Optional<Crs> crs(Path path, InputOptions options, List<String> notes) throws IOException {
    String text = text(path);
    Optional<Crs> own = Optional.empty();
    if (!text.isEmpty()) {
      String file = sibling(path, "prj").orElseThrow().getFileName().toString();
      own =
          options.crs().isPresent()
              ? matched(file, text, notes)
              : Optional.of(GivenCrs.described(file, text));
    }
    return GivenCrs.choose(path.getFileName().toString(), own, options, notes);
  }

  /** A description that cannot be matched gives way to the system the user gave. */
  private static Optional<Crs> matched(String file, String text, List<String> notes) {
    try {
      return Optional.of(Crs.parse(text));
    } catch (InputRefused e) {
      notes.add(
          "%s is not understood (%s); --crs is used".formatted(file, String.join(" ", e.lines())));
      return Optional.empty();
    }
  }
}
