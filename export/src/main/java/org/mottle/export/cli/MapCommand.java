package org.mottle.export.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.job.MapJob;
import org.mottle.export.job.MapReport;
import org.mottle.export.job.MapRequest;
import org.mottle.export.job.WarmUp;
import org.mottle.export.problem.Problems;
import org.mottle.export.settings.BandRule;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle map}: the main job. */
@Command(
    name = "map",
    mixinStandardHelpOptions = true,
    description = "Readings and outlines of greens to surfaces, zones, patches and tables.")
final class MapCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin SiteOptions site;
  @Mixin MapOptions options;
  @Mixin FieldOptions field;

  @Option(
      names = "--readings",
      required = true,
      paramLabel = "FILE",
      description =
          "Readings: CSV, GeoJSON, GeoPackage (file.gpkg#layer) or shapefile, with a column vwc_raw"
              + " and positions.")
  String readings;

  @Option(
      names = "--heads",
      paramLabel = "FILE",
      description =
          "Sprinkler heads: points with head_id, rad_m, arc_from, arc_to; moisture then says which"
              + " head to look at.")
  String heads;

  @Option(
      names = "--imagery",
      paramLabel = "FILE,...",
      split = ",",
      hideParamSyntax = true,
      description =
          "Aerial images to lie beneath the map of report.html: GeoTIFF, or PNG or JPEG with a world"
              + " file, north up in the CRS of the maps.")
  List<String> imagery = List.of();

  @Option(
      names = "--survey",
      paramLabel = "ID",
      description = "Map this survey only; default: every survey of the file.")
  String survey;

  @Option(
      names = "--value",
      paramLabel = "COLUMN",
      description = "Column to map; default vwc_raw, or what the settings say.")
  String value;

  @Option(
      names = "--band",
      paramLabel = "LOW,HIGH",
      split = ",",
      hideParamSyntax = true,
      description = "Limits for every green: dry is below, wet above.")
  List<Double> band = List.of();

  @Override
  public Integer call() throws IOException {
    WarmUp.start(options.wantsGeoPackage());
    Problems problems = new Problems();
    SiteSettings chosen = chosen(problems);
    Set<Format> formats = options.formats(problems);
    problems.throwIfAny();
    MapRequest request =
        new MapRequest(
            new MapRequest.Inputs(site.greens, readings, Optional.ofNullable(survey)),
            chosen,
            new MapRequest.Output(site.out, common.overwrite, formats, options.cells),
            common.threads(),
            field.files(),
            Optional.ofNullable(heads),
            imagery);
    return run(request, common);
  }

  static int run(MapRequest request, CommonOptions common) throws IOException {
    MapReport report;
    try (ConsoleProgress progress = common.progress()) {
      report = new MapJob(request).run(progress);
    }
    if (common.json) {
      System.out.println(report.json());
    }
    if (!common.quiet) {
      (common.json ? System.err : System.out).print(report.text());
    } else {
      report.unmapped().forEach(System.err::println);
    }
    return report.allMapped() ? ExitCode.DONE : ExitCode.PARTLY;
  }

  private SiteSettings chosen(Problems problems) throws IOException {
    SiteSettings chosen = site.site();
    if (value != null) {
      chosen = chosen.withColumn("vwc_raw", value);
    }
    if (!band.isEmpty()) {
      if (band.size() == 2
          && band.get(0) < band.get(1)
          && band.stream().allMatch(Double::isFinite)) {
        TargetBand limits = new TargetBand("", band.get(0), band.get(1), "", "");
        chosen = chosen.withBands(chosen.bands().withDefault(new BandRule.Limits(limits)));
      } else {
        problems.add("--band needs two numbers, the lower first, as 16,22; was %s", band);
      }
    }
    return options.apply(chosen, problems);
  }
}
