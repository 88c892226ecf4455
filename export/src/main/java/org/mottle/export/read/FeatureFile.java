package org.mottle.export.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import org.mottle.export.problem.InputRefused;

/**
 * Opens a file by its ending: GeoJSON, GeoPackage ({@code file.gpkg#layer}), shapefile, CSV, GPX.
 */
public final class FeatureFile {
  private static final String READABLE =
      "give GeoJSON (.geojson), GeoPackage (.gpkg), shapefile (.shp), CSV (.csv) or GPX (.gpx)";

  private FeatureFile() {}

  /** Everything in the file; of a GeoPackage the only layer, or the one after the #. */
  public static FeatureTable read(String file, InputOptions options) {
    return read(file, options, "");
  }

  /**
   * @param layer taken from a GeoPackage with several layers when none is named after a #
   * @throws InputRefused with every problem of the file
   */
  public static FeatureTable read(String file, InputOptions options, String layer) {
    return read(file, options, layer, Positions.NEEDED);
  }

  static FeatureTable read(String file, InputOptions options, String layer, Positions positions) {
    int hash = file.toLowerCase(Locale.ROOT).lastIndexOf(".gpkg#");
    String path = hash < 0 ? file : file.substring(0, hash + 5);
    Path found = existing(path);
    try {
      return switch (ending(found)) {
        case "geojson", "json" -> new GeoJsonReader(found, options).read();
        case "gpkg" -> {
          String wanted = hash < 0 ? "" : file.substring(hash + 6);
          yield new GeoPackageReader(found, options, wanted, layer).read();
        }
        case "shp" -> new ShapefileReader(found, options).read();
        case "csv", "tsv", "txt" -> new CsvReader(found, options).read(positions);
        case "gpx" -> new GpxReader(found, options).read();
        default ->
            throw new InputRefused(
                "%s: not a format that is read here; %s".formatted(found.getFileName(), READABLE));
      };
    } catch (IOException e) {
      throw new InputRefused(
          "%s cannot be read: %s".formatted(found.getFileName(), e.getMessage()));
    }
  }

  /** A table of text without positions; another format is refused. */
  static FeatureTable readCells(String file, InputOptions options) {
    Path found = existing(file);
    try {
      return switch (ending(found)) {
        case "csv", "tsv", "txt" -> new CsvReader(found, options).readCells();
        default ->
            throw new InputRefused(
                "%s: a table without positions is read as CSV only; save it as .csv"
                    .formatted(found.getFileName()));
      };
    } catch (IOException e) {
      throw new InputRefused(
          "%s cannot be read: %s".formatted(found.getFileName(), e.getMessage()));
    }
  }

  /** The file, if it is there and holds anything. */
  static Path existing(String file) {
    try {
      Path path = Path.of(file);
      if (!Files.exists(path)) {
        throw new InputRefused("%s: no such file".formatted(file));
      }
      if (!Files.isRegularFile(path)) {
        throw new InputRefused("%s is a folder; %s".formatted(file, READABLE));
      }
      if (Files.size(path) == 0) {
        throw new InputRefused("%s is empty".formatted(path.getFileName()));
      }
      return path;
    } catch (InvalidPathException | IOException e) {
      throw new InputRefused("%s cannot be read: %s".formatted(file, e.getMessage()));
    }
  }

  private static String ending(Path path) {
    String name = path.getFileName().toString();
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }
}
