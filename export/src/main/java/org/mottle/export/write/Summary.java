package org.mottle.export.write;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CellGrid;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.Json;
import org.mottle.export.record.SideBySide;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.GeometryKind;
import org.mottle.export.schema.LayerData;
import org.mottle.export.verify.Verification;

/**
 * {@code summary.json}: the caller's figures, what was delivered, and the SHA-256 of every file.
 */
final class Summary {
  private Summary() {}

  /** Rows, and what the geometries measure in all, of every layer. */
  static Map<String, Object> layers(List<LayerData> layers) {
    Map<String, Object> record = new LinkedHashMap<>();
    for (LayerData data : layers) {
      Map<String, Object> entry = new LinkedHashMap<>();
      entry.put("kind", data.layer().kind().name());
      entry.put("rows", data.rows().size());
      if (!data.layer().isTable()) {
        entry.put("placed", data.rows().stream().filter(r -> r.geometry() != null).count());
      }
      if (data.layer().kind() == GeometryKind.AREA) {
        entry.put("area_m2", round(data, Geometry::getArea));
      } else if (data.layer().kind() == GeometryKind.LINE) {
        entry.put("length_m", round(data, Geometry::getLength));
      }
      record.put(data.layer().name(), entry);
    }
    return record;
  }

  private static double round(LayerData data, ToDoubleFunction<Geometry> measure) {
    double sum = 0;
    for (FeatureRow row : data.rows()) {
      sum += row.geometry() == null ? 0 : measure.applyAsDouble(row.geometry());
    }
    return Math.rint(sum * 1e4) / 1e4;
  }

  /** File, green, survey, kind and size of every raster. */
  static List<Map<String, Object>> rasters(List<NamedRaster> rasters) {
    List<String> names = FileNames.of(rasters);
    List<Map<String, Object>> record = new ArrayList<>();
    for (int i = 0; i < rasters.size(); i++) {
      NamedRaster named = rasters.get(i);
      CellGrid grid = named.raster().grid();
      Map<String, Object> entry = new LinkedHashMap<>();
      entry.put("file", Format.RASTER.place() + "/" + names.get(i) + ".tif");
      entry.put("green_id", named.greenId());
      entry.put("surv_id", named.surveyId());
      entry.put("kind", named.kind().code());
      entry.put("west", grid.west());
      entry.put("north", grid.north());
      entry.put("cell_m", grid.cell());
      entry.put("columns", grid.columns());
      entry.put("rows", grid.rows());
      entry.put("cells", count(named));
      record.add(entry);
    }
    return record;
  }

  private static int count(NamedRaster named) {
    int cells = 0;
    for (int i = 0; i < named.raster().grid().size(); i++) {
      cells += named.raster().has(i) ? 1 : 0;
    }
    return cells;
  }

  /** Adds the files of a folder to the record and writes it there; gives them with itself last. */
  static List<Delivered.WrittenFile> write(Path folder, Map<String, Object> record, int threads)
      throws IOException {
    List<Callable<Delivered.WrittenFile>> prints = new ArrayList<>();
    for (String path : paths(folder)) {
      prints.add(() -> fingerprinted(folder, path));
    }
    List<Delivered.WrittenFile> files = new ArrayList<>(SideBySide.run(prints, threads));
    Map<String, Object> entries = new LinkedHashMap<>();
    for (Delivered.WrittenFile file : files) {
      Map<String, Object> entry = new LinkedHashMap<>();
      entry.put("bytes", file.bytes());
      entry.put("sha256", file.sha256());
      entries.put(file.path(), entry);
    }
    record.put("files", entries);
    Path summary = folder.resolve(Verification.SUMMARY);
    try (JsonGenerator json = Json.factory().createGenerator(summary.toFile(), JsonEncoding.UTF8)) {
      json.setPrettyPrinter(printer());
      Json.write(json, record);
      json.writeRaw('\n');
    }
    files.add(fingerprinted(folder, Verification.SUMMARY));
    return files;
  }

  private static Delivered.WrittenFile fingerprinted(Path folder, String path) throws IOException {
    Fingerprint print = Fingerprint.of(folder.resolve(path));
    return new Delivered.WrittenFile(path, print.bytes(), print.sha256());
  }

  /** Two spaces and a line feed on every system. */
  private static DefaultPrettyPrinter printer() {
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    return new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines);
  }

  /** Files below a folder, relative, with {@code /}, in order. */
  static List<String> paths(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile)
          .map(file -> folder.relativize(file).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }
}
