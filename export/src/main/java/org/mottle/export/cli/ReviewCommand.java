package org.mottle.export.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.InputOptions.MoistureUnit;
import org.mottle.export.review.ReviewJob;
import org.mottle.export.review.ReviewReport;
import org.mottle.export.review.ReviewRequest;
import org.mottle.export.settings.SiteSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle review}: whether readings can be trusted; nothing is mapped. */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description =
        "Readings placed, made comparable, checked and graded; every finding where it lies. Nothing"
            + " is mapped.")
final class ReviewCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin SiteOptions site;
  @Mixin FieldOptions field;

  @Option(
      names = "--readings",
      required = true,
      paramLabel = "FILE,...",
      split = ",",
      hideParamSyntax = true,
      description =
          "Readings, one or more files; rows without a position are placed by plan, order or track.")
  List<String> readings;

  @Option(
      names = "--survey",
      paramLabel = "ID",
      description = "Review this survey only; default: every survey.")
  String survey;

  @Option(
      names = "--unit",
      paramLabel = "NAME",
      description = "Unit of the readings: percent, fraction or ask; default ask.")
  String unit;

  @Override
  public Integer call() throws IOException {
    Problems problems = new Problems();
    SiteSettings settings = site.site();
    if (unit != null) {
      MoistureUnit chosen =
          VariogramCommand.choice("--unit", unit, MoistureUnit.values(), problems);
      settings = chosen == null ? settings : settings.withUnit(chosen);
    }
    problems.throwIfAny();
    ReviewRequest request =
        new ReviewRequest(
            site.greens,
            readings,
            field.files(),
            Optional.ofNullable(survey),
            settings,
            site.out,
            common.overwrite,
            common.threads());
    ReviewReport report;
    try (ConsoleProgress progress = common.progress()) {
      report = new ReviewJob(request).run(progress);
    }
    if (common.json) {
      System.out.println(report.json());
    }
    if (common.quiet) {
      report.unusable().forEach(System.err::println);
    } else {
      (common.json ? System.err : System.out).print(report.text());
    }
    return report.allUsable() ? ExitCode.DONE : ExitCode.PARTLY;
  }
}
