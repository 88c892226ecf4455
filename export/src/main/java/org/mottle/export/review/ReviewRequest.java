package org.mottle.export.review;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.mottle.export.field.FieldFiles;
import org.mottle.export.settings.SiteSettings;

/**
 * One review.
 *
 * @param greens file, or {@code file.gpkg#layer}
 * @param readings one or more files
 * @param files what was recorded beside them
 * @param survey the only survey; empty: all
 * @param site settings in force
 * @param folder where to write
 * @param overwrite whether an earlier delivery may be replaced
 * @param threads at least 1
 */
public record ReviewRequest(
    String greens,
    List<String> readings,
    FieldFiles files,
    Optional<String> survey,
    SiteSettings site,
    Path folder,
    boolean overwrite,
    int threads) {
  public ReviewRequest {
    readings = List.copyOf(readings);
  }
}
