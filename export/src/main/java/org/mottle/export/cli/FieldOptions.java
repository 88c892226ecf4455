package org.mottle.export.cli;

import java.util.List;
import java.util.Optional;
import org.mottle.export.field.FieldFiles;
import picocli.CommandLine.Option;

/** Options of {@code review} and {@code map}: what was recorded beside the readings. */
final class FieldOptions {

  @Option(
      names = "--conditions",
      paramLabel = "FILE",
      description =
          "Protocol record, a table with surv_id, green_id, rain_h, irr_h, et0_mm_d, rod_mm, plan_id"
              + " and more.")
  String conditions;

  @Option(
      names = "--plan",
      paramLabel = "FILE",
      description = "Station plans: points with plan_id, green_id, st_id, seq.")
  String plan;

  @Option(
      names = "--controls",
      paramLabel = "FILE",
      description = "Readings of control stations, where they are in a file of their own.")
  String controls;

  @Option(
      names = "--ties",
      paramLabel = "FILE",
      description = "Positions recorded at marks: points with surv_id, green_id, mark_id.")
  String ties;

  @Option(
      names = "--marks",
      paramLabel = "FILE",
      description = "Where the marks are: points with mark_id or head_id.")
  String marks;

  @Option(
      names = "--track",
      paramLabel = "FILE,...",
      split = ",",
      hideParamSyntax = true,
      description = "The receiver's tracks (GPX), for readings without positions.")
  List<String> tracks = List.of();

  @Option(
      names = "--cores",
      paramLabel = "FILE",
      description =
          "Cores beside readings (vwc_raw, wet_g, dry_g, can_g, vol_cm3): a curve of the site's own.")
  String cores;

  FieldFiles files() {
    return new FieldFiles(
        Optional.ofNullable(conditions),
        Optional.ofNullable(plan),
        Optional.ofNullable(controls),
        Optional.ofNullable(ties),
        Optional.ofNullable(marks),
        tracks,
        Optional.ofNullable(cores));
  }
}
