package org.mottle.export.season;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mottle.export.field.FieldFiles;
import org.mottle.export.read.ElevationUnit;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/**
 * One season.
 *
 * @param inputs what to read
 * @param site settings in force
 * @param changeLimitPct a change that matters, % by volume
 * @param repair surveys before and after a repair, where one is asked about
 * @param folder where to write
 * @param formats what to write
 * @param overwrite whether an earlier delivery may be replaced
 * @param threads at least 1
 */
public record SeasonRequest(
    Inputs inputs,
    SiteSettings site,
    double changeLimitPct,
    Optional<Repair> repair,
    Path folder,
    Set<Format> formats,
    boolean overwrite,
    int threads) {

  /**
   * @param greens file, or {@code file.gpkg#layer}
   * @param readings one or more files
   * @param files what was recorded beside them
   * @param elevation files of the ground's height; none: no terrain
   * @param elevationUnit of heights in files that do not say theirs
   * @param heads file of the sprinkler heads
   */
  public record Inputs(
      String greens,
      List<String> readings,
      FieldFiles files,
      List<String> elevation,
      ElevationUnit elevationUnit,
      Optional<String> heads) {
    public Inputs {
      readings = List.copyOf(readings);
      elevation = List.copyOf(elevation);
    }
  }

  /**
   * @param areas file of the ground that was repaired, polygons with a column green_id
   * @param before survey before the repair
   * @param after survey after it
   * @param wetter whether the repair was to bring water; otherwise it was to drain
   */
  public record Repair(String areas, String before, String after, boolean wetter) {}

  public SeasonRequest {
    if (threads < 1) {
      throw new IllegalArgumentException("a run needs at least 1 thread, was " + threads);
    }
  }
}
