package org.mottle.export.job;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/**
 * One run of the main job.
 *
 * @param inputs what to read
 * @param site settings in force, options of the command line included
 * @param output what to write and where
 * @param threads at least 1; the result is the same for any number
 */
public record MapRequest(Inputs inputs, SiteSettings site, Output output, int threads) {

  /**
   * @param greens file, or {@code file.gpkg#layer}
   * @param readings file, or {@code file.gpkg#layer}
   * @param survey the only survey to map; empty: all of the file
   */
  public record Inputs(String greens, String readings, Optional<String> survey) {}

  /**
   * @param folder where to write
   * @param overwrite whether an earlier delivery may be replaced
   * @param formats what to write
   * @param cells whether the layer {@code cell} is wanted
   */
  public record Output(Path folder, boolean overwrite, Set<Format> formats, boolean cells) {}
}
