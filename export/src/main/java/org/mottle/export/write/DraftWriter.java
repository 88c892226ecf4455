package org.mottle.export.write;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.LayerData;

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
    if (formats.contains(Format.GEOPACKAGE)) {
      tasks.add(() -> geoPackage(layers));
    }
    if (formats.contains(Format.GEOJSON)) {
      tasks.add(() -> geoJson(layers));
    }
    if (formats.contains(Format.SHAPEFILE)) {
      tasks.add(() -> shapefile(layers));
    }
    if (formats.contains(Format.RASTER) && !rasters.isEmpty()) {
      tasks.add(() -> rasters(rasters));
    }
    return run(tasks, threads);
  }

  private static List<String> run(List<Callable<List<String>>> tasks, int threads)
      throws IOException {
    ExecutorService workers = Executors.newFixedThreadPool(threads);
    try {
      List<String> notes = new ArrayList<>();
      for (Future<List<String>> done : workers.invokeAll(tasks)) {
        notes.addAll(done.get());
      }
      return notes;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped while writing", e);
    } catch (ExecutionException e) {
      throw unwrapped(e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }

  private static IOException unwrapped(Throwable cause) {
    if (cause instanceof RuntimeException fault) {
      throw fault;
    }
    if (cause instanceof Error error) {
      throw error;
    }
    return cause instanceof IOException io ? io : new IOException(cause);
  }

  private List<String> geoPackage(List<LayerData> layers) throws IOException {
    new GeoPackageWriter(crs, provenance).write(folder.resolve(Format.GEOPACKAGE.place()), layers);
    return List.of();
  }

  private List<String> geoJson(List<LayerData> layers) throws IOException {
    Path place = Files.createDirectory(folder.resolve(Format.GEOJSON.place()));
    GeoJsonWriter writer = new GeoJsonWriter(crs, provenance);
    for (LayerData data : layers) {
      writer.write(place.resolve(data.layer().name() + ".geojson"), data);
    }
    return List.of();
  }

  private List<String> shapefile(List<LayerData> layers) throws IOException {
    Path place = Files.createDirectory(folder.resolve(Format.SHAPEFILE.place()));
    ShapefileWriter writer = new ShapefileWriter(crs, provenance);
    List<String> notes = new ArrayList<>();
    for (LayerData data : layers) {
      notes.addAll(writer.write(place, data));
    }
    Files.writeString(place.resolve("prov.json"), Json.text(provenance.asMap(crs)) + "\n");
    return notes;
  }

  private List<String> rasters(List<NamedRaster> rasters) throws IOException {
    Path place = Files.createDirectory(folder.resolve(Format.RASTER.place()));
    GeoTiffWriter writer = new GeoTiffWriter(crs, provenance);
    List<String> names = FileNames.of(rasters);
    for (int i = 0; i < rasters.size(); i++) {
      writer.write(place.resolve(names.get(i) + ".tif"), rasters.get(i));
    }
    return List.of();
  }
}
