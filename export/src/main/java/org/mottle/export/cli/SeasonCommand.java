package org.mottle.export.cli;

import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.ElevationUnit;
import org.mottle.export.season.SeasonJob;
import org.mottle.export.season.SeasonReport;
import org.mottle.export.season.SeasonRequest;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle season}: several surveys of the same greens. */
@Command(
    name = "season",
    mixinStandardHelpOptions = true,
    description =
        "Several surveys of the same greens: what changed, what stays wet or dry, how fast the ground"
            + " dries, and what speaks for which cause of poor drainage.")
final class SeasonCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin SiteOptions site;
  @Mixin FieldOptions field;

  @Option(
      names = "--readings",
      required = true,
      paramLabel = "FILE,...",
      split = ",",
      hideParamSyntax = true,
      description = "Readings of all surveys, one or more files.")
  List<String> readings;

  @Option(
      names = "--elevation",
      paramLabel = "FILE,...",
      split = ",",
      hideParamSyntax = true,
      description =
          "Height of the ground: GeoTIFF or ASCII grid, one or more files, with 30 m or more round"
              + " the greens.")
  List<String> elevation = List.of();

  @Option(
      names = "--elevation-unit",
      paramLabel = "NAME",
      description =
          "Unit of heights in files that do not say theirs: m, ft or us-ft; default: metres, and told.")
  String elevationUnit;

  @Option(
      names = "--repaired",
      paramLabel = "FILE",
      description =
          "Ground that was repaired: polygons; with --before and --after. The rest of the green is"
              + " the control area.")
  String repaired;

  @Option(names = "--before", paramLabel = "ID", description = "Survey before the repair.")
  String before;

  @Option(names = "--after", paramLabel = "ID", description = "Survey after the repair.")
  String after;

  @Option(
      names = "--wanted",
      paramLabel = "NAME",
      description = "What the repair was to bring: drier or wetter; default ${DEFAULT-VALUE}.")
  String wanted = "drier";

  @Option(
      names = "--heads",
      paramLabel = "FILE",
      description = "Sprinkler heads: points with head_id, rad_m, arc_from, arc_to.")
  String heads;

  @Option(
      names = "--change",
      paramLabel = "PCT",
      description = "A change that matters, per cent by volume; default ${DEFAULT-VALUE}.")
  double change = 2;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description =
          "Seed; default 0, or what the settings say. The same seed gives the same bytes.")
  Long seed;

  @Override
  public Integer call() throws IOException {
    Problems problems = new Problems();
    SiteSettings settings = site.site();
    problems.require(
        change > 0 && change < 100, "--change must lie between 0 and 100, was %s", change);
    problems.require(
        (repaired == null) == (before == null) && (before == null) == (after == null),
        "--repaired, --before and --after go together: what was repaired, and the surveys before and"
            + " after it");
    problems.require(
        List.of("drier", "wetter").contains(wanted),
        "--wanted must be drier or wetter, was '%s'",
        wanted);
    Optional<ElevationUnit> unit =
        elevationUnit == null ? Optional.of(ElevationUnit.ASK) : ElevationUnit.named(elevationUnit);
    problems.require(
        unit.isPresent(), "--elevation-unit must be m, ft or us-ft, was '%s'", elevationUnit);
    problems.throwIfAny();
    if (seed != null) {
      settings =
          settings.withMapping(
              settings.mapping().withUncertainty(settings.mapping().uncertainty().withSeed(seed)));
    }
    SeasonRequest request =
        new SeasonRequest(
            new SeasonRequest.Inputs(
                site.greens,
                readings,
                field.files(),
                elevation,
                unit.orElseThrow(),
                Optional.ofNullable(heads)),
            settings,
            change,
            Optional.ofNullable(repaired)
                .map(r -> new SeasonRequest.Repair(r, before, after, wanted.equals("wetter"))),
            site.out,
            EnumSet.allOf(Format.class),
            common.overwrite,
            common.threads());
    SeasonReport report;
    try (ConsoleProgress progress = common.progress()) {
      report = new SeasonJob(request).run(progress);
    }
    if (common.json) {
      System.out.println(report.json());
    }
    if (common.quiet) {
      report.unmapped().forEach(System.err::println);
    } else {
      (common.json ? System.err : System.out).print(report.text());
    }
    return report.unmapped().isEmpty() ? ExitCode.DONE : ExitCode.PARTLY;
  }
}
