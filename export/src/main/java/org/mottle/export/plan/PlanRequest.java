package org.mottle.export.plan;

import java.nio.file.Path;
import java.util.Optional;
import org.mottle.engine.design.PlanSettings;
import org.mottle.export.settings.SiteSettings;

/**
 * One run of the planning job.
 *
 * @param inputs what to read
 * @param choice how the places are chosen
 * @param settings of every plan
 * @param aim how well the mean is to be known; empty: the stations of the settings are what is
 *     wanted
 * @param site settings of the site
 * @param output where to write
 * @param threads at least 1; the result is the same for any number
 */
public record PlanRequest(
    Inputs inputs,
    DesignChoice choice,
    PlanSettings settings,
    Optional<MeanAim> aim,
    SiteSettings site,
    Output output,
    int threads) {

  /**
   * @param greens file, or {@code file.gpkg#layer}
   * @param model variogram that says how good a map could be; empty: the borrowed one
   */
  public record Inputs(String greens, Optional<Path> model) {}

  /**
   * How well the mean of a green is to be known.
   *
   * @param sdPct standard deviation of the readings of a green, % by volume
   * @param marginPct half width wanted of the 95 % interval, % by volume
   */
  public record MeanAim(double sdPct, double marginPct) {}

  /**
   * @param folder where to write
   * @param overwrite whether an earlier delivery may be replaced
   */
  public record Output(Path folder, boolean overwrite) {}

  public PlanRequest {
    if (threads < 1) {
      throw new IllegalArgumentException("a run needs at least 1 thread, was " + threads);
    }
  }

  /** Coverage with the usual extras, on all processors; an earlier delivery is not replaced. */
  public static PlanRequest of(String greens, Path folder) {
    return new PlanRequest(
        new Inputs(greens, Optional.empty()),
        DesignChoice.coverage(),
        PlanSettings.DEFAULT,
        Optional.empty(),
        SiteSettings.DEFAULTS,
        new Output(folder, false),
        Runtime.getRuntime().availableProcessors());
  }

  public PlanRequest withChoice(DesignChoice newChoice) {
    return new PlanRequest(inputs, newChoice, settings, aim, site, output, threads);
  }

  public PlanRequest withSettings(PlanSettings newSettings) {
    return new PlanRequest(inputs, choice, newSettings, aim, site, output, threads);
  }

  /** Another variogram for what a map could be. */
  public PlanRequest withModel(Path model) {
    return new PlanRequest(
        new Inputs(inputs.greens, Optional.of(model)),
        choice,
        settings,
        aim,
        site,
        output,
        threads);
  }

  public PlanRequest withAim(double sdPct, double marginPct) {
    return new PlanRequest(
        inputs,
        choice,
        settings,
        Optional.of(new MeanAim(sdPct, marginPct)),
        site,
        output,
        threads);
  }

  public PlanRequest withSite(SiteSettings newSite) {
    return new PlanRequest(inputs, choice, settings, aim, newSite, output, threads);
  }

  /** Whether an earlier delivery may be replaced. */
  public PlanRequest withOverwrite(boolean overwrite) {
    return new PlanRequest(
        inputs, choice, settings, aim, site, new Output(output.folder, overwrite), threads);
  }

  public PlanRequest withThreads(int newThreads) {
    return new PlanRequest(inputs, choice, settings, aim, site, output, newThreads);
  }
}
