package org.mottle.export.verify;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;

/**
 * Reads every delivered file and holds what it has against the record and the other formats. Sums
 * of areas and lengths may differ by 0.01 in the working CRS and by 0.05 after the way to degrees
 * and back.
 */
final class ContentCheck {
  private static final double METRIC_TOLERANCE = 0.01;
  private static final double DEGREE_TOLERANCE = 0.05;

  private final Path folder;
  private final Map<?, ?> summary;
  private final Map<?, ?> layers;
  private final Map<String, List<String>> fieldsSeen = new HashMap<>();
  private final List<String> faults = new ArrayList<>();
  private int filesRead;

  ContentCheck(Path folder, Map<?, ?> summary) {
    this.folder = folder;
    this.summary = summary;
    this.layers = map(summary.get("layers"));
  }

  int filesRead() {
    return filesRead;
  }

  List<String> faults() {
    return faults;
  }

  void run() throws IOException {
    Object code = map(summary.get("prov")).get("crs_code");
    if (!(code instanceof String text)) {
      throw new IOException(folder + ": the record names no CRS");
    }
    Crs crs = Crs.parse(text);
    geoPackage(crs);
    CrsTransform toMetres = CrsTransform.between(Crs.wgs84(), crs);
    for (Object layer : layers.keySet()) {
      geoJson((String) layer, toMetres);
      shapefile((String) layer);
    }
    if (summary.get("rasters") instanceof List<?> rasters) {
      rasters.forEach(raster -> raster(map(raster), crs));
    }
  }

  private static Map<?, ?> map(Object value) {
    return value instanceof Map<?, ?> map ? map : Map.of();
  }

  private void geoPackage(Crs crs) {
    Path file = folder.resolve("mottle.gpkg");
    read(
        file,
        () -> {
          GeoPackageReread reread = GeoPackageReread.of(file, crs.epsg());
          reread.faults().forEach(fault -> faults.add("mottle.gpkg: " + fault));
          for (Reread layer : reread.layers()) {
            compare("mottle.gpkg, layer " + layer.layer(), layer, METRIC_TOLERANCE);
          }
          if (reread.layers().size() < layers.size()) {
            faults.add(
                "mottle.gpkg has "
                    + reread.layers().size()
                    + " layers and tables, "
                    + layers.size()
                    + " were delivered");
          }
        });
  }

  private void geoJson(String layer, CrsTransform toMetres) {
    Path file = folder.resolve("geojson").resolve(layer + ".geojson");
    read(
        file,
        () ->
            compare(
                "geojson/" + layer + ".geojson",
                GeoJsonReread.of(file, toMetres),
                DEGREE_TOLERANCE));
  }

  private void shapefile(String layer) {
    Path file = folder.resolve("shapefile").resolve(layer + ".dbf");
    boolean table = "NONE".equals(map(layers.get(layer)).get("kind"));
    read(
        file,
        () -> compare("shapefile/" + layer, ShapefileReread.of(file, table), METRIC_TOLERANCE));
  }

  private void raster(Map<?, ?> recorded, Crs crs) {
    String path = String.valueOf(recorded.get("file"));
    read(
        folder.resolve(path),
        () -> {
          GeoTiffReread tiff = GeoTiffReread.of(folder.resolve(path));
          equal(path, "EPSG code", crs.epsg(), tiff.epsg());
          equal(path, "columns", recorded.get("columns"), tiff.columns());
          equal(path, "rows", recorded.get("rows"), tiff.rows());
          equal(path, "cells with a value", recorded.get("cells"), tiff.cells());
          equal(path, "western edge", recorded.get("west"), tiff.west());
          equal(path, "northern edge", recorded.get("north"), tiff.north());
          equal(path, "side of a cell", recorded.get("cell_m"), tiff.cell());
        });
  }

  /** Reading one file; a file that is not there is told elsewhere. */
  private interface Reading {
    void run() throws IOException;
  }

  private void read(Path file, Reading reading) {
    if (!Files.isRegularFile(file)) {
      return;
    }
    filesRead++;
    try {
      reading.run();
    } catch (IOException e) {
      faults.add(folder.relativize(file).toString().replace('\\', '/') + " " + e.getMessage());
    }
  }

  private void compare(String where, Reread found, double tolerance) {
    Map<?, ?> recorded = map(layers.get(found.layer()));
    if (recorded.isEmpty()) {
      faults.add(where + " was not delivered");
      return;
    }
    equal(where, "rows", recorded.get("rows"), found.rows());
    if (recorded.get("placed") != null) {
      equal(where, "features with a geometry", recorded.get("placed"), found.placed());
    }
    measure(where, "area, m2", recorded.get("area_m2"), found.measure(), tolerance);
    measure(where, "length, m", recorded.get("length_m"), found.measure(), tolerance);
    List<String> fields = fieldsSeen.putIfAbsent(found.layer(), found.fields());
    if (fields != null && !fields.equals(found.fields())) {
      faults.add(where + " has the fields " + found.fields() + ", another format has " + fields);
    }
  }

  private void equal(String where, String what, Object recorded, Number found) {
    if (!(recorded instanceof Number number) || number.doubleValue() != found.doubleValue()) {
      faults.add(where + ": " + what + " recorded as " + recorded + ", found " + found);
    }
  }

  private void measure(String where, String what, Object recorded, double found, double tolerance) {
    if (recorded instanceof Number number
        && !(Math.abs(number.doubleValue() - found) <= tolerance)) {
      faults.add(
          String.format(
              Locale.ROOT, "%s: %s recorded as %s, found %.4f", where, what, number, found));
    }
  }
}
