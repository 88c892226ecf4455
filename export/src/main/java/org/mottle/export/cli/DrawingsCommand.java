package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mottle.export.crs.Crs;
import org.mottle.export.drawings.DrawingsJob;
import org.mottle.export.drawings.DrawingsReport;
import org.mottle.export.drawings.DrawingsRequest;
import org.mottle.export.problem.Problems;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle drawings}: a delivered map for CAD, setting out and imagery. */
@Command(
    name = "drawings",
    mixinStandardHelpOptions = true,
    description =
        "A delivered map for a drawing office and for laying over imagery: DXF, points to set out,"
            + " coloured overlays, KMZ. The delivery is verified first.")
final class DrawingsCommand implements Callable<Integer> {

  @Mixin CommonOptions common;

  @Option(
      names = "--from",
      required = true,
      paramLabel = "FOLDER",
      description = "A folder that 'mottle map' or 'mottle season' wrote.")
  Path from;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FOLDER",
      description = "Where the drawings go; another folder.")
  Path out;

  @Option(
      names = "--layers",
      paramLabel = "NAME,...",
      split = ",",
      hideParamSyntax = true,
      description = "Delivered layers to draw, as green,patch,contour; default: all that can be.")
  List<String> layers = List.of();

  @Option(
      names = "--local-grid",
      paramLabel = "FILE",
      description =
          "Three or more controls of the site's grid: name,e,n,local_e,local_n; e,n in metres of the"
              + " map's CRS. Drawings and points are then written in that grid too.")
  String controls;

  @Option(
      names = "--local-limit",
      paramLabel = "M",
      description = "Greatest RMSE of the controls, m; default ${DEFAULT-VALUE}.")
  double limit = 0.05;

  @Option(
      names = "--accept-residuals",
      description = "Use the controls although their RMSE is above the limit.")
  boolean accepted;

  @Option(
      names = "--image",
      paramLabel = "FILE",
      description =
          "Georeferenced image the overlays are for; they are drawn in its CRS. Its pixels are not"
              + " read.")
  String image;

  @Option(
      names = "--crs",
      paramLabel = "CRS",
      description = "CRS of an image that names none, like EPSG:32630.")
  String crs;

  @Option(
      names = "--marks",
      paramLabel = "FILE",
      description =
          "Marks seen in the image and in the survey: name,e,n,image_e,image_n, all in metres of the"
              + " map's CRS. How the image lies is told.")
  String marks;

  @Option(
      names = "--apply-shift",
      description = "Move overlays and KMZ by the mean shift of the marks.")
  boolean applyShift;

  @Option(
      names = "--scale",
      paramLabel = "LOW,HIGH",
      split = ",",
      hideParamSyntax = true,
      description =
          "Ends of the colours of moisture, per cent by volume; default 5,50. Keep it from survey to"
              + " survey.")
  List<Double> scale = List.of();

  @Override
  public Integer call() throws IOException {
    Problems problems = new Problems();
    boolean ends =
        scale.size() == 2
            && scale.get(0) >= 0
            && scale.get(1) > scale.get(0)
            && scale.get(1) <= 100;
    problems.require(
        scale.isEmpty() || ends,
        "--scale must be two numbers between 0 and 100, the lower first, was %s",
        scale);
    problems.require(limit > 0 && limit < 100, "--local-limit must be above 0 m, was %s", limit);
    problems.throwIfAny();
    DrawingsReport report =
        DrawingsJob.run(
            new DrawingsRequest(
                from,
                layers,
                Optional.ofNullable(controls)
                    .map(file -> new DrawingsRequest.Local(file, limit, accepted)),
                new DrawingsRequest.Imagery(
                    Optional.ofNullable(image),
                    Optional.ofNullable(crs).map(Crs::parse),
                    Optional.ofNullable(marks),
                    applyShift),
                DrawingsRequest.scale(
                    ends
                        ? Optional.of(new double[] {scale.get(0), scale.get(1)})
                        : Optional.empty()),
                new DrawingsRequest.Output(out, common.overwrite, common.threads())));
    if (common.json) {
      System.out.println(report.json());
    }
    if (!common.quiet) {
      (common.json ? System.err : System.out).print(report.text());
    }
    return ExitCode.DONE;
  }
}
