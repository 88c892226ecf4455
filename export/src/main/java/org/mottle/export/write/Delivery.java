package org.mottle.export.write;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Provenance;
import org.mottle.export.record.SideBySide;
import org.mottle.export.schema.LayerData;
import org.mottle.export.verify.Verification;

/**
 * Puts a map's files into a folder, all of them or none. Everything is written to a folder beside
 * the wanted one, read back and compared, and only then moved into place; whatever goes wrong
 * before that leaves earlier output as it was, and nothing else.
 *
 * <p>The rows are stamped with the run and the CRS, the table {@code prov} is added, and {@code
 * summary.json} lists every file with its SHA-256. Formats are written side by side on several
 * threads; the bytes are the same for any number of them, and for two runs with equal records.
 *
 * <p>The power failing within a second of the end may still lose files: nothing waits for the disk.
 * Immutable; {@link #write} may be called more than once, but not for one folder at a time.
 */
public final class Delivery {
  private final Path out;
  private final boolean overwrite;
  private final Set<Format> formats;
  private final Set<String> documentPlaces;
  private final int threads;

  private Delivery(
      Path out, boolean overwrite, Set<Format> formats, Set<String> documentPlaces, int threads) {
    this.out = out;
    this.overwrite = overwrite;
    this.formats = formats.isEmpty() ? EnumSet.noneOf(Format.class) : EnumSet.copyOf(formats);
    this.documentPlaces = Set.copyOf(documentPlaces);
    this.threads = threads;
  }

  /**
   * @param out the folder to be
   * @param overwrite whether files of an earlier delivery may be replaced
   * @param formats what to write; {@code summary.json} is always written
   */
  public static Delivery of(Path out, boolean overwrite, Set<Format> formats) {
    int threads = Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
    return new Delivery(out.toAbsolutePath().normalize(), overwrite, formats, Set.of(), threads);
  }

  /**
   * The same delivery with documents at these places.
   *
   * @param places files and folders at the top of the delivery, as {@code stations.csv}, {@code
   *     cards}
   */
  public Delivery withDocumentsAt(Set<String> places) {
    return new Delivery(out, overwrite, formats, places, threads);
  }

  /** The same delivery on at most {@code count} threads. */
  public Delivery withThreads(int count) {
    if (count < 1) {
      throw new IllegalArgumentException("threads must be >= 1, was " + count);
    }
    return new Delivery(out, overwrite, formats, documentPlaces, count);
  }

  /**
   * Refuses early what {@link #write} would refuse at the end of a long computation: an existing
   * delivery without leave to overwrite, a folder that cannot be made or written. When rasters are
   * wanted, their library begins to load beside the computation.
   */
  public void check() {
    Placement.check(out, overwrite, places());
    if (formats.contains(Format.RASTER)) {
      GeoTiffWriter.warmUp();
    }
  }

  private Set<String> places() {
    Set<String> places = new TreeSet<>(documentPlaces);
    formats.forEach(format -> places.add(format.place()));
    places.add(Verification.SUMMARY);
    return places;
  }

  /** As the other, without documents. */
  public Delivered write(
      List<LayerData> layers,
      List<NamedRaster> rasters,
      Crs crs,
      Provenance provenance,
      Map<String, ?> summary) {
    return write(layers, rasters, List.of(), crs, provenance, summary);
  }

  /**
   * Writes, reads back and moves into place.
   *
   * @param layers in the order of delivery, without {@code prov}; an empty layer is written too
   * @param rasters written when the formats have {@link Format#RASTER}
   * @param documents at the places the delivery was told of
   * @param crs working CRS of every geometry and raster
   * @param provenance record of the run
   * @param summary figures for {@code summary.json}: maps, lists, texts, numbers, booleans, nulls;
   *     the names {@code layers}, {@code rasters}, {@code files} and {@code prov} are ours
   * @throws OutputRefused when nothing was delivered; earlier output is as it was
   */
  public Delivered write(
      List<LayerData> layers,
      List<NamedRaster> rasters,
      List<Document> documents,
      Crs crs,
      Provenance provenance,
      Map<String, ?> summary) {
    requireKnown(documents);
    List<LayerData> all = stamped(layers, crs, provenance);
    Optional<String> refusal = rasterRefusal(rasters, crs);
    boolean drawn = formats.contains(Format.RASTER) && refusal.isEmpty();
    List<NamedRaster> kept = drawn ? List.copyOf(rasters) : List.of();
    try (Placement placement = Placement.beside(out, overwrite, places())) {
      Path draft = placement.draft();
      try {
        DraftWriter writer = new DraftWriter(draft, formats, crs, provenance);
        List<String> notes = new ArrayList<>(writer.write(all, kept, threads));
        refusal.ifPresent(notes::add);
        write(documents, draft);
        Map<String, Object> record = record(all, kept, crs, provenance, summary, notes);
        List<Delivered.WrittenFile> files = Summary.write(draft, record, threads);
        Verification.contents(draft, threads).orThrow();
        List<String> told = new ArrayList<>(notes);
        told.addAll(
            placement.moveIntoPlace(files.stream().map(Delivered.WrittenFile::path).toList()));
        return new Delivered(out, files, told);
      } catch (IOException e) {
        throw placement.refused(e);
      }
    }
  }

  private void requireKnown(List<Document> documents) {
    for (Document document : documents) {
      if (!documentPlaces.contains(document.place())) {
        throw new IllegalArgumentException(
            "document " + document.path() + " is at none of the places " + documentPlaces);
      }
    }
  }

  private void write(List<Document> documents, Path draft) throws IOException {
    List<Callable<Path>> work = new ArrayList<>();
    for (Document document : documents) {
      Path file = draft.resolve(document.path());
      Files.createDirectories(file.getParent());
      work.add(
          () -> {
            document.body().write(file);
            return file;
          });
    }
    if (!work.isEmpty()) {
      SideBySide.run(work, threads);
    }
  }

  private Optional<String> rasterRefusal(List<NamedRaster> rasters, Crs crs) {
    boolean wanted = formats.contains(Format.RASTER) && !rasters.isEmpty();
    return wanted ? GeoTiffWriter.refusal(crs) : Optional.empty();
  }

  private static List<LayerData> stamped(List<LayerData> layers, Crs crs, Provenance provenance) {
    Map<String, String> stamps =
        Map.of("run_id", provenance.runId(), "crs_note", crs.code() + " " + crs.name());
    List<LayerData> all = new ArrayList<>();
    for (LayerData data : layers) {
      all.add(data.stamped(stamps));
    }
    all.add(provenance.table(crs));
    Set<String> names = new HashSet<>();
    for (LayerData data : all) {
      if (!names.add(data.layer().name())) {
        throw new IllegalArgumentException(
            "layer " + data.layer().name() + " is given twice, or is one the delivery adds");
      }
    }
    return all;
  }

  private static Map<String, Object> record(
      List<LayerData> layers,
      List<NamedRaster> rasters,
      Crs crs,
      Provenance provenance,
      Map<String, ?> summary,
      List<String> notes) {
    Map<String, Object> record = new LinkedHashMap<>(summary);
    record.put("notes", notes);
    record.put("layers", Summary.layers(layers));
    record.put("rasters", Summary.rasters(rasters));
    record.put("prov", provenance.asMap(crs));
    return record;
  }
}
