package org.mottle.demo.files;

import java.io.IOException;
import java.nio.file.Path;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.site.Ring;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.walk.Season;

/** Elevation models, one a green with 35 m round it: 0.25 m cells, noise of 8 mm, in metres. */
final class ElevationFiles {

  private static final double CELL_M = 0.25;
  private static final double AROUND_M = 35;
  private static final double NOISE_M = 0.008;

  private ElevationFiles() {}

  static void write(Season season, Path folder) throws IOException {
    for (GreenSite green : CoursePlace.greens()) {
      GreenTruth truth = season.truth(green.id());
      Stream noise = Stream.of(season.seed(), green.id(), "all", "elevation noise");
      Point centre = green.world(0, 0);
      frame(green, AROUND_M, CELL_M)
          .write(
              folder,
              "dem_" + green.id(),
              (x, y) ->
                  truth.elevation().at(x - centre.x(), y - centre.y()) + NOISE_M * noise.gaussian(),
              3);
    }
  }

  /** Cells whose edges are at full multiples of their side, round the outline. */
  static GridText frame(GreenSite green, double aroundM, double cellM) {
    Ring ring = green.ring();
    double west = Math.floor((ring.minX() - aroundM) / cellM) * cellM;
    double south = Math.floor((ring.minY() - aroundM) / cellM) * cellM;
    int columns = (int) Math.ceil((ring.maxX() + aroundM - west) / cellM);
    int rows = (int) Math.ceil((ring.maxY() + aroundM - south) / cellM);
    return new GridText(green.world(west, south), cellM, columns, rows);
  }
}
