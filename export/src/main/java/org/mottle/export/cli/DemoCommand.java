package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.mottle.demo.Course;
import org.mottle.export.field.FieldFiles;
import org.mottle.export.job.MapRequest;
import org.mottle.export.job.WarmUp;
import org.mottle.export.problem.Problems;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle demo}: the bundled, wholly invented course, with all its field files. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description =
        "Places, reviews and maps a survey of the bundled, wholly invented course with all that was"
            + " recorded beside its readings.")
final class DemoCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin MapOptions options;

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where to write; default ${DEFAULT-VALUE}.")
  Path out = Path.of("mottle-demo");

  @Option(
      names = "--survey",
      paramLabel = "ID",
      description =
          "S1 to S6; default ${DEFAULT-VALUE}. S1 and S5 follow rain; the readings of S2 have no"
              + " positions and are placed by the walk's order or the receiver's track; of S3, S4 and"
              + " S5 one or two greens get no map, with the reason (exit code 3).")
  String survey = "S1";

  @Option(
      names = "--inputs",
      paramLabel = "FOLDER",
      description = "Also leave the course's own files here, to map them by hand.")
  Path inputs;

  @Override
  public Integer call() throws IOException {
    WarmUp.start(options.wantsGeoPackage());
    Problems problems = new Problems();
    if (inputs != null && Files.exists(inputs) && !Files.isDirectory(inputs)) {
      problems.add("%s is a file; --inputs needs a folder", inputs);
    } else if (inputs != null && Files.exists(inputs) && !common.overwrite) {
      problems.add("%s exists; choose another --inputs or add --overwrite", inputs);
    }
    checkSurvey(problems);
    var formats = options.formats(problems);
    options.apply(SiteSettings.DEFAULTS, problems);
    problems.throwIfAny();
    Path course = inputs == null ? Files.createTempDirectory("mottle-course") : inputs;
    try {
      Course.copyTo(course);
      // after soaking rain everything is wet against a band for play
      boolean afterRain = List.of("S1", "S5").contains(survey);
      SiteSettings site =
          SettingsReader.read(course.resolve(afterRain ? "course_after_rain.yml" : "course.yml"));
      site = options.apply(site, problems);
      problems.throwIfAny();
      return MapCommand.run(
          new MapRequest(
              new MapRequest.Inputs(
                  course.resolve("greens.geojson").toString(),
                  course.resolve("readings_" + survey + ".csv").toString(),
                  Optional.empty()),
              site.withCrs("EPSG:32628"),
              new MapRequest.Output(out, common.overwrite, formats, options.cells),
              common.threads(),
              beside(course),
              Optional.of(course.resolve("heads.geojson").toString()),
              List.of()),
          common);
    } finally {
      if (inputs == null) {
        delete(course);
      }
    }
  }

  private void checkSurvey(Problems problems) throws IOException {
    List<String> surveys = surveys();
    problems.require(
        surveys.contains(survey),
        "--survey: the course has no survey '%s'; it has %s",
        survey,
        String.join(", ", surveys));
  }

  private static List<String> surveys() throws IOException {
    return Course.names().stream()
        .filter(name -> name.matches("readings_S\\d\\.csv"))
        .map(name -> name.substring("readings_".length(), name.length() - ".csv".length()))
        .toList();
  }

  /** What was recorded beside the readings of the survey. */
  private FieldFiles beside(Path course) {
    Path track = course.resolve("track_" + survey + ".gpx");
    return new FieldFiles(
        Optional.of(course.resolve("surveys.csv").toString()),
        Optional.of(course.resolve("plan.csv").toString()),
        Optional.of(course.resolve("controls.csv").toString()),
        Optional.of(course.resolve("ties.csv").toString()),
        Optional.of(course.resolve("heads.geojson").toString()),
        Files.exists(track) ? List.of(track.toString()) : List.of(),
        Optional.empty());
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
