package org.mottle.export.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.export.record.InputFile;

/** The files behind an input as it was named: a layer's GeoPackage, a shapefile's parts. */
public final class InputRecord {
  private static final List<String> PARTS = List.of("shp", "shx", "dbf", "prj", "cpg");

  private InputRecord() {}

  /**
   * @param named as typed: a file, or {@code file.gpkg#layer}
   */
  public static List<InputFile> of(String named) throws IOException {
    int hash = named.toLowerCase(Locale.ROOT).lastIndexOf(".gpkg#");
    Path file = Path.of(hash < 0 ? named : named.substring(0, hash + 5));
    List<InputFile> files = new ArrayList<>();
    String name = file.getFileName().toString();
    if (!name.toLowerCase(Locale.ROOT).endsWith(".shp")) {
      return List.of(InputFile.of(file));
    }
    for (String part : PARTS) {
      for (String ending : List.of(part, part.toUpperCase(Locale.ROOT))) {
        Path sibling = file.resolveSibling(name.substring(0, name.length() - 3) + ending);
        if (Files.isRegularFile(sibling)) {
          files.add(InputFile.of(sibling));
          break;
        }
      }
    }
    return files;
  }
}
