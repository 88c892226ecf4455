package org.mottle.samples;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Locale;
import org.mottle.demo.Course;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.RegionMean.MeanAndSd;
import org.mottle.engine.progress.Progress;
import org.mottle.export.job.MapJob;
import org.mottle.export.job.MapReport;
import org.mottle.export.job.MapRequest;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/**
 * 03: the main job from Java: files in, a delivered folder out. {@code mottle map} does the same
 * from the command line; the README beside the samples has it.
 */
public final class Sample03MainJob {

  private Sample03MainJob() {}

  /** The folder to work in is the first argument; what it already holds is not overwritten. */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "target/sample-03");
    MapReport report = map(folder, Path.of("samples/settings/minimal.yml"));
    System.out.print(report.text());
    // what the engine found is at hand too: here the mean of each green with its standard error
    for (Outcome outcome : report.map().outcomes()) {
      if (outcome instanceof Outcome.Mapped map) {
        MeanAndSd whole = map.parts().whole();
        System.out.printf(
            Locale.ROOT,
            "%s: %.1f %%, SD %.1f %%%n",
            map.subject().label(),
            whole.mean(),
            whole.sd());
      }
    }
  }

  /**
   * @throws org.mottle.export.problem.InputRefused when the files cannot be mapped, with one line a
   *     problem; nothing has been written then
   */
  static MapReport map(Path folder, Path settings) throws IOException {
    Path course = folder.resolve("course");
    Course.copyTo(course); // the invented course, packed with the program

    SiteSettings site = SettingsReader.read(settings).withCrs("EPSG:32628");
    MapRequest request =
        MapRequest.of(
                course.resolve("greens.geojson"),
                course.resolve("readings_S3.csv"), // every survey of the file
                folder.resolve("map"))
            .withSite(site)
            .withFormats(EnumSet.of(Format.GEOPACKAGE, Format.GEOJSON));
    return new MapJob(request).run(Progress.NONE);
  }
}
