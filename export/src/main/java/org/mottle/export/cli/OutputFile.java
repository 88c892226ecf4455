package org.mottle.export.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/** One output file: refused if it exists unless told, written aside, then moved into place. */
final class OutputFile {

  private OutputFile() {}

  static void check(Path out, boolean overwrite, Problems problems) {
    if (out == null) {
      return;
    }
    if (Files.isDirectory(out)) {
      problems.add("%s is a folder; --out must name a file", out);
      return;
    }
    if (Files.exists(out) && !overwrite) {
      problems.add("%s exists; choose another --out or add --overwrite", out);
    }
    Path folder = out.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      problems.add("the folder %s does not exist; make it first", folder);
    }
  }

  static void write(Path out, CharSequence text) throws IOException {
    Path folder = out.toAbsolutePath().getParent();
    Path aside = null;
    try {
      aside = Files.createTempFile(folder, ".mottle-", ".part");
      try (var writer = Files.newBufferedWriter(aside, StandardCharsets.UTF_8)) {
        writer.append(text);
      }
      Files.move(aside, out, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      if (aside != null) {
        Files.deleteIfExists(aside);
      }
      throw new InputRefused(
          out
              + " could not be written ("
              + e.getMessage()
              + "); free space or choose another --out");
    }
  }
}
