package org.mottle.demo;

import org.mottle.demo.walk.Season;

/** Makes the invented course of any seed. */
public final class CourseGenerator {

  /** Seed of the course whose small files are packed with the tool. */
  public static final long DEFAULT_SEED = 20250514;

  private CourseGenerator() {}

  /** The course of a seed, in memory, with its truth; about half a second. */
  public static GeneratedCourse generate(long seed) {
    return new GeneratedCourse(new Season(seed));
  }
}
