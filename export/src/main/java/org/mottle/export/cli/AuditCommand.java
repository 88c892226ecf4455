package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mottle.engine.irrigation.AuditSettings;
import org.mottle.engine.irrigation.LowQuarter;
import org.mottle.engine.irrigation.WaterNeed;
import org.mottle.export.audit.AuditJob;
import org.mottle.export.audit.AuditReport;
import org.mottle.export.audit.AuditRequest;
import org.mottle.export.problem.Problems;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle audit}: how evenly water is applied, from catch cans. */
@Command(
    name = "audit",
    mixinStandardHelpOptions = true,
    description =
        "Catch cans to uniformity, scheduling coefficients and run-time multiplier; heads to the"
            + " ground they reach. Without --out the figures are printed only.")
final class AuditCommand implements Callable<Integer> {

  @Mixin CommonOptions common;

  @Option(
      names = "--cans",
      required = true,
      paramLabel = "FILE",
      description =
          "Catch cans: ml; also can_id, green_id, date, mouth_cm2, min_run, wind_ms, place.")
  String cans;

  @Option(
      names = "--greens",
      paramLabel = "FILE",
      description = "Outlines, with a column green_id; scheduling coefficients need them.")
  String greens;

  @Option(
      names = "--heads",
      paramLabel = "FILE",
      description =
          "Sprinkler heads: points with head_id, rad_m; also green_id, stn, arc_from, arc_to,"
              + " rate_mmh, kpa, state.")
  String heads;

  @Option(
      names = "--et0",
      paramLabel = "MM",
      description = "Reference evapotranspiration of a day, mm; gives run minutes.")
  Double et0;

  @Option(names = "--kc", paramLabel = "K", description = "Crop coefficient; goes with --et0.")
  Double kc;

  @Option(
      names = "--rain",
      paramLabel = "MM",
      description = "Effective rain of the day, mm; goes with --et0.")
  Double rain;

  @Option(
      names = "--low-quarter",
      paramLabel = "RULE",
      description =
          "A quarter of a count that does not divide by four: up, down or fraction; default"
              + " ${DEFAULT-VALUE}.")
  String lowQuarter = "up";

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Of the intervals; default ${DEFAULT-VALUE}.")
  long seed = 1;

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where to write layers and the page; default: nothing is written.")
  Path out;

  @Option(
      names = "--settings",
      paramLabel = "FILE",
      description = "Settings of the site (YAML): columns, CRS.")
  Path settings;

  @Option(
      names = "--crs",
      paramLabel = "CODE",
      description = "CRS of the files that carry none, as EPSG:32630.")
  String crs;

  @Option(
      names = "--working-crs",
      paramLabel = "CODE",
      description = "Projected CRS to work and deliver in; default: the UTM zone of the greens.")
  String workingCrs;

  @Override
  public Integer call() throws IOException {
    Problems problems = new Problems();
    SiteSettings site = settings == null ? SiteSettings.DEFAULTS : SettingsReader.read(settings);
    site = crs == null ? site : site.withCrs(crs);
    site = workingCrs == null ? site : site.withWorkingCrs(workingCrs);
    AuditSettings reckoned = AuditSettings.DEFAULT.withSeed(seed);
    LowQuarter rule =
        VariogramCommand.choice("--low-quarter", lowQuarter, LowQuarter.values(), problems);
    reckoned = rule == null ? reckoned : reckoned.with(rule);
    Optional<WaterNeed> need = need(problems);
    reckoned = need.isPresent() ? reckoned.with(need.get()) : reckoned;
    problems.throwIfAny();
    AuditReport report =
        new AuditJob(
                new AuditRequest(
                    new AuditRequest.Files(
                        cans, Optional.ofNullable(greens), Optional.ofNullable(heads)),
                    site,
                    reckoned,
                    Optional.ofNullable(out),
                    common.overwrite,
                    common.threads()))
            .run();
    if (common.json) {
      System.out.println(report.json());
    }
    if (common.quiet) {
      report.lacking().forEach(System.err::println);
    } else {
      (common.json ? System.err : System.out).print(report.text());
    }
    return report.lacking().isEmpty() ? ExitCode.DONE : ExitCode.PARTLY;
  }

  private Optional<WaterNeed> need(Problems problems) {
    if (et0 == null && kc == null && rain == null) {
      return Optional.empty();
    }
    if (et0 == null || kc == null || rain == null) {
      problems.add(
          "--et0, --kc and --rain go together, as --et0 5 --kc 0.9 --rain 0: run minutes are 60"
              + " (kc et0 - rain) multiplier / rate");
      return Optional.empty();
    }
    problems.require(et0 >= 0 && et0 <= 20, "--et0 must be from 0 to 20 mm a day, was %s", et0);
    problems.require(kc >= 0 && kc <= 2, "--kc must be from 0 to 2, was %s", kc);
    problems.require(rain >= 0 && rain <= 1000, "--rain must be from 0 to 1000 mm, was %s", rain);
    return problems.isEmpty() ? Optional.of(new WaterNeed(et0, kc, rain)) : Optional.empty();
  }
}
