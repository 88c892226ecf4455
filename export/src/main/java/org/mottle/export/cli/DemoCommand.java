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
import org.mottle.export.job.MapRequest;
import org.mottle.export.job.WarmUp;
import org.mottle.export.problem.Problems;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle demo}: maps the bundled, wholly invented course. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = "Maps the bundled, wholly invented course from start to finish.")
final class DemoCommand implements Callable<Integer> {

  /** Of this survey the course has only the order of the readings and the track. */
  private static final String WITHOUT_POSITIONS = "S2";

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
      description = "S1 (after rain), S3, S4, S5 or S6; default ${DEFAULT-VALUE}.")
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
              common.threads()),
          common);
    } finally {
      if (inputs == null) {
        delete(course);
      }
    }
  }

  private void checkSurvey(Problems problems) throws IOException {
    if (survey.equals(WITHOUT_POSITIONS)) {
      problems.add(
          "--survey %s cannot be mapped: its positions are withheld, only the order of the readings"
              + " and the receiver's track are known; choose S1, S3, S4, S5 or S6",
          survey);
    } else if (!Course.names().contains("readings_" + survey + ".csv")) {
      problems.add("--survey: the course has no survey '%s'; it has S1, S3, S4, S5 and S6", survey);
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
