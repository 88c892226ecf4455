package org.mottle.samples;

import java.nio.file.Path;
import java.util.Locale;
import org.mottle.export.cli.Mottle;
import org.mottle.export.read.FeatureFile;
import org.mottle.export.read.FeatureTable;
import org.mottle.export.read.InputOptions;

/**
 * 04: a published survey of another kind of ground, 5 km² of flood plain, through the command line
 * as a user types it; what was delivered is then read back.
 */
public final class Sample04FloodPlain {

  private Sample04FloodPlain() {}

  /** The folder to write is the first argument; it must not hold an earlier map. */
  public static void main(String[] args) {
    Path out = Path.of(args.length > 0 ? args[0] : "target/sample-04");
    int code = map(Path.of("samples/flood-plain"), out);
    System.out.println("exit code " + code);
    if (code != 0) {
      return; // the reasons have been printed
    }
    FeatureTable zones = zones(out);
    for (FeatureTable.Row zone : zones.rows()) {
      System.out.println(
          String.format(
              Locale.ROOT,
              "%-13s %.1f ha, mean %.1f %%",
              zone.values().get(zones.columns().indexOf("cls")),
              zone.geometry().getArea() / 10_000,
              zone.values().get(zones.columns().indexOf("vwc_mean"))));
    }
  }

  static int map(Path floodPlain, Path out) {
    return Mottle.run(
        "map",
        "--greens",
        floodPlain.resolve("outline.gpkg").toString(),
        "--readings",
        floodPlain.resolve("samples.csv").toString(),
        "--settings",
        floodPlain.resolve("settings.yml").toString(),
        "--out",
        out.toString());
  }

  /** A layer of the GeoPackage, by its name after the #. */
  static FeatureTable zones(Path delivered) {
    return FeatureFile.read(delivered.resolve("mottle.gpkg") + "#zone", InputOptions.NONE);
  }
}
