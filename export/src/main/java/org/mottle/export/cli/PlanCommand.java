package org.mottle.export.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mottle.engine.design.PlanSettings;
import org.mottle.export.job.WarmUp;
import org.mottle.export.plan.DesignChoice;
import org.mottle.export.plan.PlanJob;
import org.mottle.export.plan.PlanReport;
import org.mottle.export.plan.PlanRequest;
import org.mottle.export.plan.PlanRequest.MeanAim;
import org.mottle.export.problem.Problems;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code mottle plan}: where to read, on every green of a file. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    description =
        "Outlines of greens to stations: for a receiver (GPX), any GIS (GeoPackage, GeoJSON), as a"
            + " table (CSV), and as a card to print for each green.")
final class PlanCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin SiteOptions site;
  @Mixin PlanOptions options;

  @Override
  public Integer call() throws IOException {
    WarmUp.start(true);
    Problems problems = new Problems();
    DesignChoice choice = options.choice(problems);
    PlanSettings wanted = options.settings(problems);
    Optional<MeanAim> aim = options.aim(problems);
    problems.throwIfAny();
    PlanRequest request =
        new PlanRequest(
            new PlanRequest.Inputs(site.greens, Optional.ofNullable(options.model)),
            choice,
            wanted,
            aim,
            site.site(),
            new PlanRequest.Output(site.out, common.overwrite),
            common.threads());
    PlanReport report;
    try (ConsoleProgress progress = common.progress()) {
      report = new PlanJob(request).run(progress);
    }
    return tell(report);
  }

  private int tell(PlanReport report) {
    if (common.json) {
      System.out.println(report.json());
    }
    if (!common.quiet) {
      (common.json ? System.err : System.out).print(report.text());
    } else {
      report.unplanned().forEach(System.err::println);
    }
    return report.allPlanned() ? ExitCode.DONE : ExitCode.PARTLY;
  }
}
