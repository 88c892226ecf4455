package org.mottle.export.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.survey.Green;
import org.mottle.export.problem.Problems;

/**
 * The cells of one green with its surrounds while they are gathered from files: the file that
 * covers most of it first, then those whose cells line up with it, in the order given, where
 * nothing is yet.
 */
final class ElevationWindow {
  /** 320 MB of heights; a green with 40 m round it has that many at 2 cm cells. */
  static final long MOST_CELLS = 40_000_000;

  private final Green green;
  private final CellGrid grid;
  private final double[] heights;
  private final List<CellFile> files;
  private final List<String> notes;

  private ElevationWindow(Green green, CellGrid grid, List<CellFile> files, List<String> notes) {
    this.green = green;
    this.grid = grid;
    this.files = files;
    this.notes = notes;
    this.heights = new double[grid.size()];
    Arrays.fill(heights, Double.NaN);
  }

  /** Empty when no file reaches the green itself, or too many cells are a problem. */
  static Optional<ElevationWindow> of(
      Green green, List<CellFile> candidates, double marginM, Problems problems) {
    Envelope outline = green.outline().getEnvelopeInternal();
    Envelope wanted = outline.copy();
    wanted.expandBy(marginM);
    List<CellFile> near =
        candidates.stream()
            .filter(f -> shared(f, wanted) > 0)
            .sorted(
                Comparator.comparingDouble((CellFile f) -> -shared(f, outline))
                    .thenComparingDouble(f -> -shared(f, wanted)))
            .collect(Collectors.toCollection(ArrayList::new));
    if (near.stream().noneMatch(f -> shared(f, outline) > 0)) {
      return Optional.empty();
    }
    CellFile first = near.get(0);
    List<String> notes = new ArrayList<>();
    List<CellFile> odd = near.stream().filter(f -> !first.frame().linesUpWith(f.frame())).toList();
    near.removeAll(odd);
    if (!odd.isEmpty()) {
      notes.add(
          "green %s: the cells of %s do not line up with those of %s, which covers more of it; only"
                  .formatted(
                      green.id(),
                      Problems.listed(odd.stream().map(CellFile::name).toList()),
                      first.name())
              + " the latter is used there");
    }
    Envelope covered = new Envelope();
    near.forEach(f -> covered.expandToInclude(f.frame().box().intersection(wanted)));
    return grid(first.frame(), covered, green, problems)
        .map(g -> new ElevationWindow(green, g, near, notes));
  }

  private static double shared(CellFile file, Envelope box) {
    return file.frame().box().intersection(box).getArea();
  }

  private static Optional<CellGrid> grid(
      CellFrame frame, Envelope covered, Green green, Problems problems) {
    double cell = frame.cell();
    // a thousandth of a cell is rounding, not ground
    double left = Math.floor((covered.getMinX() - frame.west()) / cell + 1e-3);
    double right = Math.ceil((covered.getMaxX() - frame.west()) / cell - 1e-3);
    double top = Math.floor((frame.north() - covered.getMaxY()) / cell + 1e-3);
    double bottom = Math.ceil((frame.north() - covered.getMinY()) / cell - 1e-3);
    double cells = (right - left) * (bottom - top);
    if (cells > MOST_CELLS) {
      problems.add(
          "green %s with its surrounds has %.0f cells of %s m, more than %d; resample the elevation"
              + " with gdalwarp -tr 0.25 0.25 -r average",
          green.id(), cells, cell, MOST_CELLS);
      return Optional.empty();
    }
    return Optional.of(
        new CellGrid(
            frame.west() + left * cell,
            frame.north() - top * cell,
            cell,
            (int) Math.max(1, right - left),
            (int) Math.max(1, bottom - top)));
  }

  /** Whether this file comes first here, or later, in which case only voids are filled. */
  boolean reads(CellFile file, boolean first) {
    return first ? files.get(0) == file : files.indexOf(file) > 0;
  }

  boolean hasVoids() {
    return Arrays.stream(heights).anyMatch(Double::isNaN);
  }

  /** Column of the window in which column 0 of the file lies; may be negative. */
  private int columnShift(CellFrame frame) {
    return (int) Math.rint((frame.west() - grid.west()) / grid.cell());
  }

  private int rowShift(CellFrame frame) {
    return (int) Math.rint((grid.north() - frame.north()) / grid.cell());
  }

  /** What of a file falls into the window. */
  CellFile.Part part(CellFile file) {
    CellFrame frame = file.frame();
    int dc = columnShift(frame);
    int dr = rowShift(frame);
    return new CellFile.Part(
        Math.max(0, -dr),
        Math.min(frame.rows(), grid.rows() - dr),
        Math.max(0, -dc),
        Math.min(frame.columns(), grid.columns() - dc));
  }

  /**
   * Takes what a row has for the window.
   *
   * @param firstColumn of the file, of the first value
   * @param values heights in metres
   */
  void take(CellFile file, int fileRow, int firstColumn, double[] values) {
    int row = fileRow + rowShift(file.frame());
    if (row < 0 || row >= grid.rows()) {
      return;
    }
    int shift = columnShift(file.frame()) + firstColumn;
    int end = Math.min(values.length, grid.columns() - shift);
    for (int i = Math.max(0, -shift); i < end; i++) {
      int at = row * grid.columns() + shift + i;
      if (Double.isNaN(heights[at])) {
        heights[at] = values[i];
      }
    }
  }

  Green green() {
    return green;
  }

  /** The elevation; empty when the outline has no height at all. */
  Optional<Elevation> elevation() {
    int[] inside = inside();
    long missing = Arrays.stream(heights).filter(Double::isNaN).count();
    if (inside[0] == inside[1]) {
      return Optional.empty();
    }
    double share = (double) inside[1] / inside[0];
    if (inside[1] > 0) {
      notes.add(
          String.format(
              Locale.ROOT,
              "green %s: %.1f m² of it (%.1f %%) have no height in %s; what is said of the ground"
                  + " there leaves them out",
              green.id(),
              inside[1] * grid.cell() * grid.cell(),
              100 * share,
              Problems.listed(names())));
    }
    String vertical =
        files.stream()
            .map(f -> f.heights().datum().isEmpty() ? Elevation.NOT_RECORDED : f.heights().datum())
            .distinct()
            .collect(Collectors.joining("; "));
    return Optional.of(
        new Elevation(
            new Raster(grid, heights),
            names(),
            vertical,
            (double) missing / heights.length,
            share,
            notes));
  }

  private List<String> names() {
    return files.stream().map(CellFile::name).toList();
  }

  /** Cells with their centre in the outline, and those of them without a height. */
  private int[] inside() {
    IndexedPointInAreaLocator outline = new IndexedPointInAreaLocator(green.outline());
    Envelope box = green.outline().getEnvelopeInternal();
    int[] counts = new int[2];
    Coordinate centre = new Coordinate();
    for (int row = 0; row < grid.rows(); row++) {
      centre.y = grid.y(row);
      for (int column = 0; column < grid.columns(); column++) {
        centre.x = grid.x(column);
        if (box.contains(centre) && outline.locate(centre) != Location.EXTERIOR) {
          counts[0]++;
          counts[1] += Double.isNaN(heights[grid.index(row, column)]) ? 1 : 0;
        }
      }
    }
    return counts;
  }
}
