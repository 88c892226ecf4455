package org.mottle.export.calibration;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * The calibration study from seeds to tables. Arguments: folder, seeds thresholds are chosen on,
 * seeds that are reported, and any of {@code demo}, {@code raw} and {@code other} to run some of
 * the generators only. Seeds are run by two threads; the tables do not depend on it. Progress with
 * the time of each course goes to the console, never into a table.
 */
public final class Study {
  private static final int THREADS = 2;

  /** A green's own variogram first, then two marks: shares closed are counted between them. */
  static final List<Method> METHODS =
      List.of(
          new FittedVariogram("own variogram", true),
          new TrueCovariance(false),
          new ExhaustiveVariogram(),
          new TrueCovariance(true),
          new FittedVariogram("survey pooled", false),
          new EngineMapper());

  private Study() {}

  public static void main(String[] args) throws IOException, InterruptedException {
    if (args.length < 3) {
      throw new IllegalArgumentException(
          "the study needs a folder and two runs of seeds, had " + List.of(args));
    }
    List<String> wanted = List.of(args).subList(3, args.length);
    List<Seeds> seeds =
        List.of(Seeds.parse("choosing", args[1]), Seeds.parse("reporting", args[2]));
    List<String> markdown = new ArrayList<>(heading(seeds));
    List<String> csv = new ArrayList<>(List.of(CsvTables.HEADING));
    ExecutorService threads = Executors.newFixedThreadPool(THREADS);
    try {
      for (Courses courses : generators(wanted)) {
        for (Seeds some : seeds) {
          Block block = block(courses, some, threads);
          markdown.addAll(MarkdownTables.of(block));
          csv.addAll(CsvTables.of(block));
        }
      }
    } finally {
      threads.shutdownNow();
    }
    Path folder = Files.createDirectories(Path.of(args[0]));
    Files.write(folder.resolve("results.md"), markdown);
    Files.write(folder.resolve("results.csv"), csv);
  }

  private static List<Courses> generators(List<String> wanted) {
    List<Courses> courses = new ArrayList<>();
    for (String word : wanted.isEmpty() ? List.of("demo", "raw", "other") : wanted) {
      courses.add(
          switch (word) {
            case "demo" -> new DemoCourses(true);
            case "raw" -> new DemoCourses(false);
            case "other" -> new OtherCourses();
            default ->
                throw new IllegalArgumentException(
                    "there is no generator '" + word + "'; there are demo, raw and other");
          });
    }
    return courses;
  }

  private static Block block(Courses courses, Seeds seeds, ExecutorService threads)
      throws InterruptedException {
    List<Future<CourseResult>> running = new ArrayList<>();
    for (long seed : seeds.all()) {
      running.add(threads.submit(() -> timed(courses, seed)));
    }
    List<CourseResult> results = new ArrayList<>();
    for (Future<CourseResult> each : running) {
      try {
        results.add(each.get());
      } catch (ExecutionException e) {
        throw new IllegalStateException(
            courses.name() + ", " + seeds + ": " + e.getCause().getMessage(), e.getCause());
      }
    }
    return new Block(
        courses.name(), seeds, METHODS.stream().map(Method::name).toList(), List.copyOf(results));
  }

  private static CourseResult timed(Courses courses, long seed) {
    long start = System.nanoTime();
    CourseResult result = CourseResult.of(courses, seed, METHODS);
    System.err.printf(
        Locale.ROOT,
        "%s, seed %d: %.1f s%n",
        courses.name(),
        seed,
        (System.nanoTime() - start) / 1e9);
    return result;
  }

  private static List<String> heading(List<Seeds> seeds) {
    return List.of(
        "# Results of the calibration study",
        "",
        "Written by `docs/calibration/run.sh`; README.md says what the figures are.",
        "",
        "- machine: "
            + System.getProperty("os.arch")
            + ", "
            + Runtime.getRuntime().availableProcessors()
            + " CPUs",
        "- Java " + Runtime.version() + ", " + System.getProperty("java.vm.name"),
        "- " + seeds.get(0) + "; " + seeds.get(1),
        "");
  }
}
