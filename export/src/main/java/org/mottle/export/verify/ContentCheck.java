package org.mottle.export.verify;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.record.SideBySide;

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

  ContentCheck(Path folder, Map<?, ?> summary) {
    this.folder = folder;
    this.summary = summary;
    this.layers = map(summary.get("layers"));
  }

  /** The faults come in the same order for any number of threads. */
  Verification run(int threads) throws IOException {
    Object code = map(summary.get("prov")).get("crs_code");
    if (!(code instanceof String text)) {
      throw new UnreadableRecord(
          folder.resolve(Verification.SUMMARY) + " names no CRS in prov.crs_code", null);
    }
    Crs crs = Crs.parse(text);
    CrsTransform toMetres = CrsTransform.between(Crs.wgs84(), crs);
    List<Callable<Found>> readings = new ArrayList<>();
    readings.add(read("mottle.gpkg", found -> geoPackage(found, crs)));
    for (Object layer : layers.keySet()) {
      readings.add(geoJson((String) layer, toMetres));
      readings.add(shapefile((String) layer));
      for (String place : List.of("geojson/", "shapefile/")) {
        readings.add(style(place + layer + ".qml", (String) layer, StyleReread.QML_ROOT));
        readings.add(style(place + layer + ".sld", (String) layer, StyleReread.SLD_ROOT));
      }
    }
    if (summary.get("rasters") instanceof List<?> rasters) {
      for (Object raster : rasters) {
        readings.add(raster(map(raster), crs));
        String file = String.valueOf(map(raster).get("file"));
        readings.add(style(file.replaceFirst("\\.tif$", ".qml"), "", StyleReread.QML_ROOT));
      }
    }
    List<Found> all = SideBySide.run(readings, threads);
    List<String> faults = new ArrayList<>();
    all.forEach(found -> faults.addAll(found.faults));
    compareFields(all, faults);
    compareStyles(all, faults);
    return new Verification((int) all.stream().filter(f -> f.there).count(), faults, List.of());
  }

  /** What reading one file brought to light. */
  private static final class Found {
    private final boolean there;
    private final List<Reread> layers = new ArrayList<>();
    private final List<String> faults = new ArrayList<>();

    /** Texts of styles, by layer and outermost element. */
    private final Map<String, String> styles = new LinkedHashMap<>();

    Found(boolean there) {
      this.there = there;
    }
  }

  private void compareFields(List<Found> all, List<String> faults) {
    Map<String, List<String>> seen = new HashMap<>();
    for (Found found : all) {
      for (Reread layer : found.layers) {
        List<String> fields = seen.putIfAbsent(layer.layer(), layer.fields());
        if (fields != null && !fields.equals(layer.fields())) {
          faults.add(
              "layer "
                  + layer.layer()
                  + " has the fields "
                  + fields
                  + " in one format and "
                  + layer.fields()
                  + " in another");
        }
      }
    }
  }

  private void compareStyles(List<Found> all, List<String> faults) {
    Map<String, String> seen = new HashMap<>();
    for (Found found : all) {
      found.styles.forEach(
          (key, style) -> {
            String other = seen.putIfAbsent(key, style);
            if (other != null && !other.equals(style)) {
              faults.add("the style " + key + " differs from one place to another");
            }
          });
    }
  }

  private static Map<?, ?> map(Object value) {
    return value instanceof Map<?, ?> map ? map : Map.of();
  }

  /** Reading of one file into what was found; a file that is not there is told elsewhere. */
  private interface Reading {
    void into(Found found) throws IOException;
  }

  private Callable<Found> read(String path, Reading reading) {
    return () -> {
      Found found = new Found(Files.isRegularFile(folder.resolve(path)));
      if (found.there) {
        try {
          reading.into(found);
        } catch (IOException e) {
          found.faults.add(path + " " + e.getMessage());
        }
      }
      return found;
    };
  }

  private void geoPackage(Found found, Crs crs) throws IOException {
    GeoPackageReread reread = GeoPackageReread.of(folder.resolve("mottle.gpkg"), crs.epsg());
    reread.qml().forEach((l, qml) -> found.styles.put(StyleReread.QML_ROOT + " of " + l, qml));
    reread.sld().forEach((l, sld) -> found.styles.put(StyleReread.SLD_ROOT + " of " + l, sld));
    reread.faults().forEach(fault -> found.faults.add("mottle.gpkg: " + fault));
    for (Reread layer : reread.layers()) {
      compare("mottle.gpkg, layer " + layer.layer(), layer, METRIC_TOLERANCE, found);
    }
    List<Object> missing = new ArrayList<>(layers.keySet());
    reread.layers().forEach(layer -> missing.remove(layer.layer()));
    missing.forEach(layer -> found.faults.add("mottle.gpkg has no layer " + layer));
  }

  /**
   * @param layer whose style it is; empty of a raster, which has it once
   */
  private Callable<Found> style(String path, String layer, String root) {
    return read(
        path,
        found -> {
          String style = Files.readString(folder.resolve(path));
          StyleReread.check(style, root);
          if (!layer.isEmpty()) {
            found.styles.put(root + " of " + layer, style);
          }
        });
  }

  private Callable<Found> geoJson(String layer, CrsTransform toMetres) {
    String path = "geojson/" + layer + ".geojson";
    return read(
        path,
        found -> {
          Reread reread = GeoJsonReread.of(folder.resolve(path), toMetres);
          compare(path, reread, DEGREE_TOLERANCE, found);
        });
  }

  private Callable<Found> shapefile(String layer) {
    String path = "shapefile/" + layer + ".dbf";
    boolean table = "NONE".equals(map(layers.get(layer)).get("kind"));
    return read(
        path,
        found -> {
          Reread reread = ShapefileReread.of(folder.resolve(path), table);
          compare("shapefile/" + layer, reread, METRIC_TOLERANCE, found);
        });
  }

  private Callable<Found> raster(Map<?, ?> recorded, Crs crs) {
    String path = String.valueOf(recorded.get("file"));
    return read(
        path,
        found -> {
          GeoTiffReread tiff = GeoTiffReread.of(folder.resolve(path));
          equal(path, "EPSG code", crs.epsg(), tiff.epsg(), found);
          equal(path, "columns", recorded.get("columns"), tiff.columns(), found);
          equal(path, "rows", recorded.get("rows"), tiff.rows(), found);
          equal(path, "cells with a value", recorded.get("cells"), tiff.cells(), found);
          equal(path, "western edge", recorded.get("west"), tiff.west(), found);
          equal(path, "northern edge", recorded.get("north"), tiff.north(), found);
          equal(path, "side of a cell", recorded.get("cell_m"), tiff.cell(), found);
        });
  }

  private void compare(String where, Reread reread, double tolerance, Found found) {
    Map<?, ?> recorded = map(layers.get(reread.layer()));
    if (recorded.isEmpty()) {
      found.faults.add(where + " was not delivered");
      return;
    }
    found.layers.add(reread);
    equal(where, "rows", recorded.get("rows"), reread.rows(), found);
    if (recorded.get("placed") != null) {
      equal(where, "features with a geometry", recorded.get("placed"), reread.placed(), found);
    }
    measure(where, "area, m2", recorded.get("area_m2"), reread.measure(), tolerance, found);
    measure(where, "length, m", recorded.get("length_m"), reread.measure(), tolerance, found);
  }

  private static void equal(String where, String what, Object recorded, Number value, Found found) {
    if (!(recorded instanceof Number number) || number.doubleValue() != value.doubleValue()) {
      found.faults.add(where + ": " + what + " recorded as " + recorded + ", found " + value);
    }
  }

  private static void measure(
      String where, String what, Object recorded, double value, double tolerance, Found found) {
    if (recorded instanceof Number number
        && !(Math.abs(number.doubleValue() - value) <= tolerance)) {
      found.faults.add(
          String.format(
              Locale.ROOT, "%s: %s recorded as %s, found %.4f", where, what, number, value));
    }
  }
}
