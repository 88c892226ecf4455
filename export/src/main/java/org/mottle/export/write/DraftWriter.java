package org.mottle.export.write;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.record.SideBySide;
import org.mottle.export.schema.DataDictionary;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;
import org.mottle.export.style.LayerStyle;
import org.mottle.export.style.LayerStyles;
import org.mottle.export.style.Qml;
import org.mottle.export.style.RasterStyle;
import org.mottle.export.style.RasterStyles;
import org.mottle.export.style.Sld;

/**
 * Writes every format of a delivery into a folder, side by side on several threads. Every file is
 * written by one thread from start to end, so the bytes do not depend on their number.
 */
final class DraftWriter {
  private final Path folder;
  private final Set<Format> formats;
  private final Crs crs;
  private final Provenance provenance;

  DraftWriter(Path folder, Set<Format> formats, Crs crs, Provenance provenance) {
    this.folder = folder;
    this.formats = formats;
    this.crs = crs;
    this.provenance = provenance;
  }

  /** Writes all and gives the notes of the writers, in the order of formats and layers. */
  List<String> write(List<LayerData> layers, List<NamedRaster> rasters, int threads)
      throws IOException {
    List<Callable<List<String>>> tasks = new ArrayList<>();
    // these two load the most: side by side from the start
    if (formats.contains(Format.RASTER) && !rasters.isEmpty()) {
      tasks.add(() -> rasters(rasters));
    }
    if (formats.contains(Format.GEOPACKAGE)) {
      tasks.add(() -> geoPackage(layers));
    }
    if (formats.contains(Format.GEOJSON)) {
      Path place = Files.createDirectory(folder.resolve(Format.GEOJSON.place()));
      GeoJsonWriter writer = new GeoJsonWriter(crs, provenance);
      layers.forEach(data -> tasks.add(() -> geoJson(writer, place, data)));
      tasks.add(() -> stylesAndNames(place, layers));
    }
    if (formats.contains(Format.SHAPEFILE)) {
      Path place = Files.createDirectory(folder.resolve(Format.SHAPEFILE.place()));
      ShapefileWriter writer = new ShapefileWriter(crs, provenance);
      layers.forEach(data -> tasks.add(() -> shapefile(writer, place, data)));
      tasks.add(() -> besideShapefiles(place, layers));
      tasks.add(() -> stylesAndNames(place, layers));
    }
    List<String> notes = new ArrayList<>();
    SideBySide.run(tasks, threads).forEach(notes::addAll);
    return notes;
  }

  private List<String> geoPackage(List<LayerData> layers) throws IOException {
    new GeoPackageWriter(crs, provenance).write(folder.resolve(Format.GEOPACKAGE.place()), layers);
    return List.of();
  }

  private static List<String> geoJson(GeoJsonWriter writer, Path place, LayerData data)
      throws IOException {
    writer.write(place.resolve(data.layer().name() + ".geojson"), data);
    return List.of();
  }

  private static List<String> shapefile(ShapefileWriter writer, Path place, LayerData data)
      throws IOException {
    List<String> cuts = writer.write(place, data);
    // the whole record is in prov.json
    return data.layer() == Layers.PROV ? List.of() : cuts;
  }

  private List<String> besideShapefiles(Path place, List<LayerData> layers) throws IOException {
    Files.writeString(place.resolve("prov.json"), Json.text(beside(layers)) + "\n");
    return List.of();
  }

  /** How the layers are drawn, by the names that readers look for, and what the fields mean. */
  private static List<String> stylesAndNames(Path place, List<LayerData> layers)
      throws IOException {
    List<Layer> all = layers.stream().map(LayerData::layer).toList();
    for (Layer layer : all) {
      Optional<LayerStyle> style = LayerStyles.of(layer);
      if (style.isPresent()) {
        Files.writeString(place.resolve(layer.name() + ".qml"), Qml.of(style.get()));
        Files.writeString(place.resolve(layer.name() + ".sld"), Sld.of(style.get()));
      }
    }
    Files.writeString(place.resolve("names.csv"), DataDictionary.csv(all));
    return List.of();
  }

  /** What a shapefile has no room for: the record, the meaning of the fields and of -9999. */
  private Map<String, Object> beside(List<LayerData> layers) {
    Map<String, Object> beside = new LinkedHashMap<>();
    beside.put("prov", provenance.asMap(crs));
    beside.put("missing", DbfWriter.MISSING_SAID);
    Map<String, Object> fields = new LinkedHashMap<>();
    layers.forEach(data -> fields.put(data.layer().name(), DataDictionary.fields(data.layer())));
    beside.put("fields", fields);
    return beside;
  }

  private List<String> rasters(List<NamedRaster> rasters) throws IOException {
    Path place = Files.createDirectory(folder.resolve(Format.RASTER.place()));
    GeoTiffWriter writer = new GeoTiffWriter(crs, provenance);
    List<String> names = FileNames.of(rasters);
    for (int i = 0; i < rasters.size(); i++) {
      writer.write(place.resolve(names.get(i) + ".tif"), rasters.get(i));
      Optional<RasterStyle> style = RasterStyles.of(rasters.get(i).kind().code());
      if (style.isPresent()) {
        Files.writeString(place.resolve(names.get(i) + ".qml"), Qml.of(style.get()));
      }
    }
    return List.of();
  }
}
