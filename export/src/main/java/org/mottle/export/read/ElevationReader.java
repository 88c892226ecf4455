package org.mottle.export.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads elevation: GeoTIFF, ESRI ASCII grid, or points with a column {@code z_m} (CSV, GeoJSON,
 * GeoPackage, shapefile). Files may be tiles of a mosaic or one a green. Of files of cells only the
 * ground near the greens is kept, read in one pass (two where tiles meet); heights are not changed
 * but for their unit.
 *
 * <p>Cells in another CRS than the working one are refused: resampling them would smooth away part
 * of the noise by which hollows are judged. Points in another CRS are carried over.
 */
public final class ElevationReader {
  private static final double LOWEST_M = -500;
  private static final double HIGHEST_M = 9000;

  /** Cells from which slopes within a green can hardly be told, m. */
  private static final double COARSE_M = 1;

  private final InputOptions options;
  private final ElevationOptions how;
  private final Greens greens;
  private final Problems problems = new Problems();
  private final List<String> notes = new ArrayList<>();
  private final List<CellFile> cells = new ArrayList<>();
  private final List<ElevationPoints> points = new ArrayList<>();

  private ElevationReader(InputOptions options, ElevationOptions how, Greens greens) {
    this.options = options;
    this.how = how;
    this.greens = greens;
  }

  /**
   * @param files in any order; where tiles overlap, the one that covers more of a green counts
   * @param greens already read, in the working CRS
   * @throws InputRefused with every problem of all files
   */
  public static ElevationSource read(
      List<String> files, InputOptions options, ElevationOptions how, Greens greens) {
    return new ElevationReader(options, how, greens).read(files);
  }

  private ElevationSource read(List<String> files) {
    for (String file : files) {
      try {
        open(file);
      } catch (InputRefused e) {
        problems.add(e);
      }
    }
    tellHeights();
    List<ElevationWindow> windows = windows();
    for (boolean first : new boolean[] {true, false}) {
      for (CellFile file : cells) {
        gather(file, windows, first);
      }
      // a file that is wrong is told once
      problems.throwIfAny();
    }
    Map<String, Elevation> rasters = new LinkedHashMap<>();
    for (ElevationWindow window : windows) {
      window.elevation().ifPresent(e -> rasters.put(window.green().id(), e));
    }
    ElevationSource source = new ElevationSource(rasters, together(), how.marginM(), List.of());
    tellUncovered(source);
    problems.throwIfAny();
    return new ElevationSource(rasters, source.points(), how.marginM(), notes);
  }

  private void open(String file) {
    // a layer of a GeoPackage is named behind the file
    if (file.toLowerCase(Locale.ROOT).contains(".gpkg#")) {
      readPoints(file);
      return;
    }
    Path path = FeatureFile.existing(file);
    String name = path.getFileName().toString();
    try {
      String begin = begin(path);
      if (begin.startsWith("II*\0")
          || begin.startsWith("MM\0*")
          || begin.startsWith("II+\0")
          || begin.startsWith("MM\0+")) {
        take(GeoTiffFile.open(path, options));
      } else if (begin.stripLeading().toLowerCase(Locale.ROOT).matches("(?s)(ncols|nrows)\\s.*")) {
        take(AsciiGridFile.open(path, options));
      } else if (name.toLowerCase(Locale.ROOT).matches(".*\\.(tiff?|asc|agr|grd)")) {
        throw new InputRefused(
            "%s is not a raster: it begins with neither the mark of a TIFF nor ncols; give a"
                    .formatted(name)
                + " GeoTIFF or an ESRI ASCII grid");
      } else {
        readPoints(file);
      }
    } catch (IOException e) {
      throw new InputRefused("%s cannot be read: %s".formatted(name, e.getMessage()));
    }
  }

  private static String begin(Path path) throws IOException {
    try (InputStream in = Files.newInputStream(path)) {
      return new String(in.readNBytes(64), StandardCharsets.ISO_8859_1);
    }
  }

  private void take(CellFile file) {
    notes.addAll(file.notes());
    Crs crs = file.crs().orElseThrow(() -> GivenCrs.missing(file.name(), "does not say its CRS"));
    if (!crs.equals(greens.working())) {
      throw new InputRefused(
          "%s is in %s, the greens are mapped in %s; %s"
              .formatted(file.name(), crs, greens.working(), remedy(crs)));
    }
    cells.add(file);
  }

  private String remedy(Crs crs) {
    String warp = "reproject it with gdalwarp -t_srs " + greens.working().code() + " -r bilinear";
    try {
      return "work in its own with --working-crs %s, or %s"
          .formatted(crs.requireWorking().code(), warp);
    } catch (InputRefused e) {
      return warp;
    }
  }

  /** One line a matter, however many tiles. */
  private void tellHeights() {
    boolean ask = how.unit() == ElevationUnit.ASK;
    tell(
        f -> f.heights().datum().isEmpty(),
        "vertical datum not recorded in %s; heights are good for differences only");
    tell(
        f -> ask && f.heights().unit().isEmpty(),
        "unit of heights not recorded in %s, taken as metres; --elevation-unit ft (or us-ft) if they"
            + " are feet");
    for (ElevationUnit feet : List.of(ElevationUnit.FOOT, ElevationUnit.US_FOOT)) {
      tell(f -> unit(f) == feet, "heights in " + feet.words() + " in %s, taken to metres");
    }
    tell(
        f -> !ask && f.heights().unit().filter(u -> u != how.unit()).isPresent(),
        "unit of heights as recorded in %s; --elevation-unit is for files that say nothing");
    tell(
        f -> f.frame().cell() > COARSE_M,
        "cells of more than 1 m in %s; slopes and hollows of a green want 0.5 m or less");
  }

  private void tell(Predicate<CellFile> so, String format) {
    List<String> names = cells.stream().filter(so).map(CellFile::name).toList();
    if (!names.isEmpty()) {
      notes.add(format.formatted(Problems.listed(names, 4)));
    }
  }

  private ElevationUnit unit(CellFile file) {
    return file.heights().unit().orElse(asked());
  }

  private ElevationUnit asked() {
    return how.unit() == ElevationUnit.ASK ? ElevationUnit.METRE : how.unit();
  }

  private void readPoints(String file) {
    FeatureTable table = FeatureFile.read(file, options, "elevation");
    Problems found = new Problems();
    Columns columns = new Columns(table, options, found);
    found.require(
        columns.find("z_m").isPresent(),
        "%s has no column z_m with the heights; its columns are %s; map it in the settings, like"
            + " columns: {z_m: Height}",
        table.name(),
        columns.named());
    found.throwIfAny();
    double[] z = columns.numbers("z_m");
    double metres = asked().metres();
    for (int i = 0; i < z.length; i++) {
      z[i] *= metres;
    }
    CellChecks checks = new CellChecks(table, found);
    checks.numbers("z_m", z, v -> v >= LOWEST_M && v <= HIGHEST_M, "a height from -500 to 9000 m");
    Coordinate[] places = PointPlaces.of(table, greens.working(), found);
    found.throwIfAny();
    List<Integer> without = checks.rows(i -> Double.isNaN(z[i]));
    int[] kept = IntStream.range(0, z.length).filter(i -> !Double.isNaN(z[i])).toArray();
    points.add(
        new ElevationPoints(
            Arrays.stream(kept).mapToDouble(i -> places[i].x).toArray(),
            Arrays.stream(kept).mapToDouble(i -> places[i].y).toArray(),
            Arrays.stream(kept).mapToDouble(i -> z[i]).toArray(),
            List.of(table.name())));
    notes.addAll(table.notes());
    if (!without.isEmpty()) {
      notes.add(
          "%s: no height in %s %s, left out"
              .formatted(table.name(), table.unit(without.size()), Problems.listed(without)));
    }
    if (asked() != ElevationUnit.METRE) {
      notes.add("%s: heights in %s, taken to metres".formatted(table.name(), asked().words()));
    }
  }

  private Optional<ElevationPoints> together() {
    if (points.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new ElevationPoints(
            points.stream().flatMapToDouble(p -> Arrays.stream(p.x())).toArray(),
            points.stream().flatMapToDouble(p -> Arrays.stream(p.y())).toArray(),
            points.stream().flatMapToDouble(p -> Arrays.stream(p.z())).toArray(),
            points.stream().flatMap(p -> p.sources().stream()).toList()));
  }

  private List<ElevationWindow> windows() {
    List<ElevationWindow> windows = new ArrayList<>();
    for (Green green : greens.greens()) {
      ElevationWindow.of(green, cells, how.marginM(), problems).ifPresent(windows::add);
    }
    return windows;
  }

  private void gather(CellFile file, List<ElevationWindow> windows, boolean first) {
    List<ElevationWindow> wanting =
        windows.stream()
            .filter(w -> w.reads(file, first))
            .filter(w -> first || w.hasVoids())
            .toList();
    if (wanting.isEmpty()) {
      return;
    }
    CellFile.Part part =
        wanting.stream().map(w -> w.part(file)).reduce(CellFile.Part::joined).orElseThrow();
    ElevationRange range = new ElevationRange(file, wanting);
    double metres = unit(file).metres();
    try {
      file.read(
          part,
          (row, values) -> {
            for (int i = 0; i < values.length && metres != 1; i++) {
              values[i] *= metres;
            }
            range.check(row, part.firstColumn(), values);
            wanting.forEach(w -> w.take(file, row, part.firstColumn(), values));
          });
    } catch (InputRefused e) {
      problems.add(e);
    } catch (IOException e) {
      problems.add("%s cannot be read: %s", file.name(), String.valueOf(e.getMessage()));
    }
    range.tell(problems);
  }

  /** Counts heights near the greens that no ground of this earth has. */
  private static final class ElevationRange {
    private final CellFile file;
    private final List<CellFile.Part> parts;
    private long count;
    private String first = "";

    ElevationRange(CellFile file, List<ElevationWindow> windows) {
      this.file = file;
      this.parts = windows.stream().map(w -> w.part(file)).toList();
    }

    void check(int row, int firstColumn, double[] values) {
      for (int i = 0; i < values.length; i++) {
        if (values[i] < LOWEST_M || values[i] > HIGHEST_M) {
          int column = firstColumn + i;
          if (parts.stream().anyMatch(p -> holds(p, row, column))) {
            count++;
            if (count == 1) {
              first = "row %d, column %d (%s m)".formatted(row + 1, column + 1, values[i]);
            }
          }
        }
      }
    }

    private static boolean holds(CellFile.Part part, int row, int column) {
      return row >= part.firstRow()
          && row < part.endRow()
          && column >= part.firstColumn()
          && column < part.endColumn();
    }

    void tell(Problems problems) {
      problems.require(
          count == 0,
          "%s: %d cell(s) near the greens out of -500 to 9000 m, the first in %s; if that stands"
              + " for no data, declare it, like gdal_translate -a_nodata",
          file.name(),
          count,
          first);
    }
  }

  private void tellUncovered(ElevationSource source) {
    List<String> without =
        greens.greens().stream()
            .filter(g -> source.near(g).isEmpty() && source.pointsNear(g).isEmpty())
            .map(Green::id)
            .toList();
    if (without.size() < greens.greens().size()) {
      if (!without.isEmpty()) {
        notes.add("no elevation for green %s".formatted(Problems.listed(without)));
      }
      return;
    }
    Envelope ground = new Envelope();
    greens.greens().forEach(g -> ground.expandToInclude(g.outline().getEnvelopeInternal()));
    cells.forEach(f -> tellAway(f.name(), f.frame().box(), ground));
    for (ElevationPoints p : points) {
      tellAway(p.sources().get(0), p.box(), ground);
    }
  }

  private void tellAway(String name, Envelope box, Envelope ground) {
    problems.add(
        "%s has no height at any green: it covers %s, the greens %s; check file and CRS",
        name, extent(box), extent(ground));
  }

  private static String extent(Envelope box) {
    return String.format(
        Locale.ROOT,
        "x %.0f to %.0f, y %.0f to %.0f",
        box.getMinX(),
        box.getMaxX(),
        box.getMinY(),
        box.getMaxY());
  }
}
