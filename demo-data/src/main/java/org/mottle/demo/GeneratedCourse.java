package org.mottle.demo;

import java.io.IOException;
import java.nio.file.Path;
import java.util.SortedMap;
import org.mottle.demo.files.CourseFolder;
import org.mottle.demo.files.SmallFiles;
import org.mottle.demo.walk.Season;

/**
 * One invented course in memory. {@link #smallFiles} is what a tool may see; {@link #season} holds
 * the truth it is judged by.
 *
 * @param season ground, plans, logs and catch cans
 */
public record GeneratedCourse(Season season) {

  public long seed() {
    return season.seed();
  }

  /** The files a tool is given, by name. */
  public SortedMap<String, byte[]> smallFiles() {
    return SmallFiles.of(season);
  }

  /** Writes the small files. */
  public void writeSmall(Path folder) throws IOException {
    CourseFolder.writeSmall(season, folder);
  }

  /** Writes elevation models, orthophotos and, in truth/, the truth. */
  public void writeLarge(Path folder) throws IOException {
    CourseFolder.writeLarge(season, folder);
  }
}
