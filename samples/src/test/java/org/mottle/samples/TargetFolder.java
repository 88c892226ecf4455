package org.mottle.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/**
 * A folder under {@code target/samples} that is empty at the start of a test and stays after it.
 */
final class TargetFolder {

  private TargetFolder() {}

  static Path fresh(String name) throws IOException {
    Path folder = Path.of("target", "samples", name);
    if (Files.exists(folder)) {
      try (Stream<Path> walk = Files.walk(folder)) {
        for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
    return Files.createDirectories(folder);
  }
}
