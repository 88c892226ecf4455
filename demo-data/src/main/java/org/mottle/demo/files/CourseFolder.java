package org.mottle.demo.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.mottle.demo.walk.Season;

/** A course on disk: the small files, and on request elevation, orthophotos and truth. */
public final class CourseFolder {

  private CourseFolder() {}

  /** What a tool is given, and no truth. */
  public static void writeSmall(Season season, Path folder) throws IOException {
    for (Map.Entry<String, byte[]> file : SmallFiles.of(season).entrySet()) {
      Path target = folder.resolve(file.getKey());
      Files.createDirectories(target.getParent());
      Files.write(target, file.getValue());
    }
  }

  /** The rasters a tool is given, and the truth in a folder of its own. */
  public static void writeLarge(Season season, Path folder) throws IOException {
    Files.createDirectories(folder);
    ElevationFiles.write(season, folder);
    Orthophotos.write(season, folder);
    TruthFiles.write(season, folder.resolve("truth"));
  }
}
