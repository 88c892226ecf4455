package org.mottle.export.write;

import java.nio.file.Path;
import java.util.List;

/**
 * What a delivery put in place.
 *
 * @param folder the delivered folder
 * @param files every file, in the order of their paths; {@code summary.json} last
 * @param notes what a format could not hold as it was, one line each; for the user to see
 */
public record Delivered(Path folder, List<WrittenFile> files, List<String> notes) {
  public Delivered {
    files = List.copyOf(files);
    notes = List.copyOf(notes);
  }

  /**
   * @param path relative to the folder, with {@code /} on every system
   * @param bytes size
   * @param sha256 of the content
   */
  public record WrittenFile(String path, long bytes, String sha256) {}
}
