package org.mottle.demo;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * {@code GenerateCourse --out DIR [--seed N] [--small]}: writes the course of a seed. Without
 * {@code --small} the elevation models, the orthophotos and the truth come with it. Exit code 2 and
 * one line where the arguments are wrong.
 */
public final class GenerateCourse {

  private static final String USAGE = "usage: GenerateCourse --out DIR [--seed N] [--small]";

  /** What the arguments ask for. */
  record Options(Path out, long seed, boolean small) {}

  private GenerateCourse() {}

  public static void main(String[] arguments) throws IOException {
    Options options;
    try {
      options = parse(List.of(arguments));
    } catch (IllegalArgumentException e) {
      System.err.println(e.getMessage() + "\n" + USAGE);
      System.exit(2);
      return;
    }
    GeneratedCourse course = CourseGenerator.generate(options.seed());
    course.writeSmall(options.out());
    if (!options.small()) {
      course.writeLarge(options.out());
    }
    System.out.println("course of seed " + options.seed() + " in " + options.out());
  }

  static Options parse(List<String> arguments) {
    Deque<String> left = new ArrayDeque<>(arguments);
    Path out = null;
    long seed = CourseGenerator.DEFAULT_SEED;
    boolean small = false;
    while (!left.isEmpty()) {
      String option = left.pop();
      switch (option) {
        case "--out" -> out = Path.of(value(option, left));
        case "--seed" -> seed = number(value(option, left));
        case "--small" -> small = true;
        default -> throw new IllegalArgumentException("unknown option '" + option + "'");
      }
    }
    if (out == null) {
      throw new IllegalArgumentException("--out is missing from " + arguments);
    }
    return new Options(out, seed, small);
  }

  private static String value(String option, Deque<String> left) {
    if (left.isEmpty()) {
      throw new IllegalArgumentException(option + " needs a value");
    }
    return left.pop();
  }

  private static long number(String text) {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("--seed must be a whole number, was '" + text + "'", e);
    }
  }
}
