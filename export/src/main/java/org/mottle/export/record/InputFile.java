package org.mottle.export.record;

import java.io.IOException;
import java.nio.file.Path;

/**
 * A file the run read.
 *
 * @param name file name without folders, so that the record is the same wherever it is run
 * @param bytes its size
 * @param sha256 of its content, 64 lower case hexadecimal digits
 */
public record InputFile(String name, long bytes, String sha256) {
  public static InputFile of(Path file) throws IOException {
    Fingerprint print = Fingerprint.of(file);
    return new InputFile(file.getFileName().toString(), print.bytes(), print.sha256());
  }
}
