package org.mottle.demo;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/** The packed files of the invented course, seed {@link CourseGenerator#DEFAULT_SEED}. */
public final class Course {

  private static final String FOLDER = "course/";
  private static final String INDEX = "index.txt";

  private Course() {}

  /** Names of all files, with / for folders; the index itself is not among them. */
  public static List<String> names() throws IOException {
    try (InputStream in = open(INDEX)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
  }

  /** The content of one file; the caller closes it. */
  public static InputStream open(String name) throws IOException {
    InputStream in = Course.class.getResourceAsStream(FOLDER + name);
    if (in == null) {
      throw new FileNotFoundException("the course has no file '" + name + "'");
    }
    return in;
  }

  /** Copies every file into a folder, which is made where it is missing. */
  public static void copyTo(Path folder) throws IOException {
    for (String name : names()) {
      Path target = folder.resolve(name);
      Files.createDirectories(target.getParent());
      try (InputStream in = open(name)) {
        Files.copy(in, target, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }
}
