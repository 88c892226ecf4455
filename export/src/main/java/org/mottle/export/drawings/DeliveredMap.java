package org.mottle.export.drawings;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.FeatureFile;
import org.mottle.export.read.FeatureTable;
import org.mottle.export.read.InputOptions;
import org.mottle.export.record.Json;
import org.mottle.export.verify.UnreadableRecord;
import org.mottle.export.verify.Verification;
import org.mottle.export.write.RasterKind;

/** A delivered folder that has been verified: its layers, its rasters, whose run it was. */
final class DeliveredMap {
  private static final String GEOPACKAGE = "mottle.gpkg";

  private final Path folder;
  private final Map<?, ?> summary;
  private final Map<?, ?> prov;

  private DeliveredMap(Path folder, Map<?, ?> summary) {
    this.folder = folder;
    this.summary = summary;
    this.prov = (Map<?, ?>) summary.get("prov");
  }

  /**
   * @param file of the raster, without folder and ending
   */
  record Found(String file, String greenId, String surveyId, RasterKind kind, Raster raster) {}

  /**
   * @throws InputRefused for a folder that is not, or no longer, as it was delivered
   */
  static DeliveredMap open(Path folder) throws IOException {
    if (!Files.isRegularFile(folder.resolve(Verification.SUMMARY))) {
      throw new InputRefused(
          folder + " holds no " + Verification.SUMMARY + "; name a folder that was delivered");
    }
    try {
      Verification found = Verification.of(folder);
      if (!found.isFine()) {
        List<String> lines = new ArrayList<>(found.faults());
        lines.add(folder + " is not as it was delivered; deliver it again, nothing was drawn");
        throw new InputRefused(lines);
      }
    } catch (UnreadableRecord e) {
      throw new InputRefused(e.getMessage() + "; deliver again into another folder");
    }
    if (!Files.isRegularFile(folder.resolve(GEOPACKAGE))) {
      throw new InputRefused(folder + " holds no " + GEOPACKAGE + ", from which drawings are made");
    }
    return new DeliveredMap(folder, (Map<?, ?>) Json.read(folder.resolve(Verification.SUMMARY)));
  }

  Crs crs() {
    return Crs.parse((String) prov.get("crs_code"));
  }

  String runId() {
    return (String) prov.get("run_id");
  }

  String credit() {
    return prov.get("credit") instanceof String credit ? credit : "";
  }

  Instant utc() {
    return Instant.parse((String) prov.get("utc"));
  }

  Path record() {
    return folder.resolve(Verification.SUMMARY);
  }

  /** A layer with its rows; empty when it was not delivered or has none. */
  Optional<FeatureTable> layer(String name) {
    boolean filled =
        summary.get("layers") instanceof Map<?, ?> layers
            && layers.get(name) instanceof Map<?, ?> layer
            && layer.get("rows") instanceof Number rows
            && rows.longValue() > 0;
    return filled
        ? Optional.of(FeatureFile.read(folder.resolve(GEOPACKAGE) + "#" + name, InputOptions.NONE))
        : Optional.empty();
  }

  /** The earliest reading of each survey, as it was written down. */
  Map<String, String> taken() {
    Map<String, String> taken = new LinkedHashMap<>();
    layer("survey")
        .ifPresent(
            table -> {
              int survey = table.columns().indexOf("surv_id");
              int start = table.columns().indexOf("t_start");
              for (FeatureTable.Row row : table.rows()) {
                if (start >= 0 && row.values().get(start) instanceof String t) {
                  taken.merge(
                      String.valueOf(row.values().get(survey)),
                      t,
                      (a, b) -> a.compareTo(b) <= 0 ? a : b);
                }
              }
            });
    return taken;
  }

  /** Rasters of the record, in its order; their cells are not read yet. */
  List<Map<?, ?>> rasters() {
    List<Map<?, ?>> all = new ArrayList<>();
    if (summary.get("rasters") instanceof List<?> rasters) {
      rasters.forEach(raster -> all.add((Map<?, ?>) raster));
    }
    return all;
  }

  static Optional<RasterKind> kind(Map<?, ?> raster) {
    return Arrays.stream(RasterKind.values())
        .filter(k -> k.code().equals(raster.get("kind")))
        .findFirst();
  }

  /** Reads the cells. */
  Found read(Map<?, ?> entry) throws IOException {
    RasterKind kind = kind(entry).orElseThrow();
    String path = (String) entry.get("file");
    // a record is input too
    if (!path.matches("raster/[A-Za-z0-9_-]+\\.tif")) {
      throw new InputRefused(
          folder.resolve(Verification.SUMMARY) + " names a raster '" + path + "'; deliver again");
    }
    CellGrid grid =
        new CellGrid(
            number(entry, "west"),
            number(entry, "north"),
            number(entry, "cell_m"),
            (int) number(entry, "columns"),
            (int) number(entry, "rows"));
    double[] cells = new double[grid.size()];
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    try (FileImageInputStream stream = new FileImageInputStream(folder.resolve(path).toFile())) {
      reader.setInput(stream);
      reader.read(0).getRaster().getSamples(0, 0, grid.columns(), grid.rows(), 0, cells);
    } finally {
      reader.dispose();
    }
    for (int i = 0; i < cells.length; i++) {
      cells[i] = cells[i] == kind.cell().noData() ? Double.NaN : cells[i];
    }
    return new Found(
        path.substring("raster/".length(), path.length() - ".tif".length()),
        String.valueOf(entry.get("green_id")),
        String.valueOf(entry.get("surv_id")),
        kind,
        new Raster(grid, cells));
  }

  private static double number(Map<?, ?> entry, String name) {
    return ((Number) entry.get(name)).doubleValue();
  }
}
