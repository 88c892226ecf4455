package org.mottle.export.job;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mottle.export.field.FieldFiles;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/**
 * One run of the main job. {@link #of} and the {@code with} methods build one.
 *
 * @param inputs what to read
 * @param site settings in force, options of the command line included
 * @param output what to write and where
 * @param threads at least 1; the result is the same for any number
 * @param field what was recorded beside the readings; with any of it the readings are placed and
 *     reviewed before they are mapped
 * @param heads file of the sprinkler heads; with it moisture is asked which head to look at
 * @param imagery aerial images to lie beneath the map of the report
 */
public record MapRequest(
    Inputs inputs,
    SiteSettings site,
    Output output,
    int threads,
    FieldFiles field,
    Optional<String> heads,
    List<String> imagery) {

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

  /** Readings that are mapped as they stand. */
  public MapRequest(Inputs inputs, SiteSettings site, Output output, int threads) {
    this(inputs, site, output, threads, FieldFiles.NONE, Optional.empty(), List.of());
  }

  public MapRequest {
    imagery = List.copyOf(imagery);
    if (threads < 1) {
      throw new IllegalArgumentException("a run needs at least 1 thread, was " + threads);
    }
  }

  /**
   * Every survey of the readings, without bands, in every format but not the layer {@code cell}, on
   * all processors; an earlier delivery is not replaced.
   *
   * @param greens file, or {@code file.gpkg#layer}
   * @param readings file, or {@code file.gpkg#layer}
   * @param folder where to write
   */
  public static MapRequest of(String greens, String readings, Path folder) {
    return new MapRequest(
        new Inputs(greens, readings, Optional.empty()),
        SiteSettings.DEFAULTS,
        new Output(folder, false, EnumSet.allOf(Format.class), false),
        Runtime.getRuntime().availableProcessors());
  }

  /** Greens and readings in files of their own. */
  public static MapRequest of(Path greens, Path readings, Path folder) {
    return of(greens.toString(), readings.toString(), folder);
  }

  public MapRequest withSurvey(String surveyId) {
    return new MapRequest(
        new Inputs(inputs.greens, inputs.readings, Optional.of(surveyId)),
        site,
        output,
        threads,
        field,
        heads,
        imagery);
  }

  public MapRequest withSite(SiteSettings newSite) {
    return new MapRequest(inputs, newSite, output, threads, field, heads, imagery);
  }

  public MapRequest withFormats(Set<Format> formats) {
    return with(new Output(output.folder, output.overwrite, formats, output.cells));
  }

  /** Whether an earlier delivery may be replaced. */
  public MapRequest withOverwrite(boolean overwrite) {
    return with(new Output(output.folder, overwrite, output.formats, output.cells));
  }

  /** Whether the layer {@code cell} is wanted. */
  public MapRequest withCells(boolean cells) {
    return with(new Output(output.folder, output.overwrite, output.formats, cells));
  }

  public MapRequest withThreads(int newThreads) {
    return new MapRequest(inputs, site, output, newThreads, field, heads, imagery);
  }

  /** With what was recorded beside the readings. */
  public MapRequest withField(FieldFiles files) {
    return new MapRequest(inputs, site, output, threads, files, heads, imagery);
  }

  /** With the sprinkler heads of the site. */
  public MapRequest withHeads(String file) {
    return new MapRequest(inputs, site, output, threads, field, Optional.of(file), imagery);
  }

  /** With aerial images beneath the map of the report. */
  public MapRequest withImagery(List<String> files) {
    return new MapRequest(inputs, site, output, threads, field, heads, files);
  }

  private MapRequest with(Output newOutput) {
    return new MapRequest(inputs, site, newOutput, threads, field, heads, imagery);
  }
}
