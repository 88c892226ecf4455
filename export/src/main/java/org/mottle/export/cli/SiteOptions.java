package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import picocli.CommandLine.Option;

/** Options of every command that works on a site's greens: outlines, settings, CRS, where to. */
final class SiteOptions {

  @Option(
      names = "--greens",
      required = true,
      paramLabel = "FILE",
      description =
          "Outlines: GeoJSON, GeoPackage (file.gpkg#layer) or shapefile, with a column green_id.")
  String greens;

  @Option(names = "--out", required = true, paramLabel = "FOLDER", description = "Where to write.")
  Path out;

  @Option(
      names = "--settings",
      paramLabel = "FILE",
      description = "Settings of the site (YAML): columns, bands, CRS, unit, how to map.")
  Path settings;

  @Option(
      names = "--crs",
      paramLabel = "CODE",
      description = "CRS of the files that carry none, as EPSG:32630.")
  String crs;

  @Option(
      names = "--working-crs",
      paramLabel = "CODE",
      description = "Projected CRS to work and deliver in; default: the UTM zone of the greens.")
  String workingCrs;

  /**
   * The settings of the file, or the defaults, with the CRS that were typed in their place.
   *
   * @throws IOException when the file cannot be read
   */
  SiteSettings site() throws IOException {
    SiteSettings site = settings == null ? SiteSettings.DEFAULTS : SettingsReader.read(settings);
    if (crs != null) {
      site = site.withCrs(crs);
    }
    return workingCrs == null ? site : site.withWorkingCrs(workingCrs);
  }
}
