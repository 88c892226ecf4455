package org.mottle.export.read;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.RootZone;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads greens into the working CRS: the one asked for; else the file's own when maps can be
 * computed in it, so that nothing is bent on the way; else the UTM zone of the greens. Columns:
 * {@code green_id}, and {@code name, build, grass, root_mm, fc_pct, wp_pct, poro_pct, bnd_src,
 * acc_m} where they are there.
 */
public final class GreensReader {
  /** Layer taken from a GeoPackage that holds several. */
  private static final String LAYER = "green";

  private final FeatureTable table;
  private final Optional<Crs> asked;
  private final Problems problems = new Problems();
  private final Columns columns;
  private final List<String> notes;

  /**
   * @param working CRS asked for; empty to choose
   * @throws InputRefused with every problem of the file
   */
  public static Greens read(String file, InputOptions options, Optional<Crs> working) {
    working.ifPresent(Crs::requireWorking);
    return new GreensReader(FeatureFile.read(file, options, LAYER), options, working).read();
  }

  private GreensReader(FeatureTable table, InputOptions options, Optional<Crs> asked) {
    this.table = table;
    this.asked = asked;
    this.columns = new Columns(table, options, problems);
    this.notes = new ArrayList<>(table.notes());
  }

  private Greens read() {
    Crs source = table.crs().orElseThrow(() -> GivenCrs.missing(table.name(), "names no CRS"));
    String[] ids = ids();
    List<Geometry> outlines = outlines(ids);
    problems.throwIfAny();
    Crs working = working(source, outlines);
    CrsTransform transform = CrsTransform.between(source, working);
    tellAccuracy(transform);
    List<Green> greens = new ArrayList<>();
    RootZone[] soil = soil();
    Green.Boundary[] boundaries = boundaries();
    String[] names = columns.texts("name");
    for (int i = 0; i < outlines.size(); i++) {
      outline(transform, outlines.get(i), ids[i], i)
          .map(new Numbered(ids[i], names[i], soil[i], boundaries[i])::green)
          .ifPresent(greens::add);
    }
    problems.throwIfAny();
    tellOverlaps(greens);
    return new Greens(greens, working, table.name(), notes);
  }

  private record Numbered(String id, String name, RootZone soil, Green.Boundary boundary) {
    Green green(Geometry outline) {
      return new Green(id, name, outline, soil, boundary);
    }
  }

  private String[] ids() {
    OptionalInt column = columns.find("green_id");
    int n = table.rows().size();
    if (column.isEmpty() && n == 1) {
      notes.add("%s has no green_id; its only green is called 1".formatted(table.name()));
      return new String[] {"1"};
    }
    if (column.isEmpty()) {
      problems.add(
          "%s has no column green_id; its columns are %s: map the one that names the greens in the settings, like columns: {green_id: Green}",
          table.name(), columns.named());
      problems.throwIfAny();
    }
    String[] ids = columns.texts("green_id");
    Map<String, List<Integer>> rowsOf = new LinkedHashMap<>();
    for (int i = 0; i < n; i++) {
      rowsOf.computeIfAbsent(ids[i], k -> new ArrayList<>()).add(table.rows().get(i).number());
    }
    rowsOf.forEach(this::requireOwn);
    return ids;
  }

  private void requireOwn(String id, List<Integer> rows) {
    if (id.isEmpty()) {
      problems.add(
          "%s: green_id is empty in %s %s; name every green",
          table.name(), table.unit(rows.size()), Problems.listed(rows));
    } else if (rows.size() > 1) {
      problems.add(
          "%s: green %s stands in %s %s; make its parts one multipolygon, or give each its own id",
          table.name(), id, table.unit(2), Problems.listed(rows));
    }
  }

  private List<Geometry> outlines(String[] ids) {
    List<Geometry> outlines = new ArrayList<>();
    for (int i = 0; i < ids.length; i++) {
      FeatureTable.Row row = table.rows().get(i);
      String name = ids[i].isEmpty() ? "without id" : ids[i];
      OutlineCheck.problem(row.geometry())
          .ifPresent(p -> problems.add("%s (green %s): %s", table.at(row), name, p));
      outlines.add(row.geometry());
    }
    return outlines;
  }

  private Crs working(Crs source, List<Geometry> outlines) {
    if (asked.isPresent()) {
      return asked.get();
    }
    if (source.isProjected()) {
      try {
        return source.requireWorking();
      } catch (InputRefused e) {
        notes.add("%s is in %s; maps are computed in the UTM zone".formatted(table.name(), source));
      }
    }
    return utm(source, outlines);
  }

  private Crs utm(Crs source, List<Geometry> outlines) {
    CrsTransform toDegrees = CrsTransform.between(source, Crs.wgs84());
    double first = Double.NaN;
    double lon = 0;
    double lat = 0;
    for (Geometry outline : outlines) {
      Coordinate middle = outline.getEnvelopeInternal().centre();
      toDegrees
          .problemAt(middle.x, middle.y)
          .ifPresent(p -> problems.add("%s: %s", table.name(), p));
      problems.throwIfAny();
      Coordinate degrees = toDegrees.apply(middle);
      first = Double.isNaN(first) ? degrees.x : first;
      // from the first on, so that greens on both sides of the 180th meridian stay together
      lon += Math.IEEEremainder(degrees.x - first, 360) / outlines.size();
      lat += degrees.y / outlines.size();
    }
    Crs utm = Crs.utmFor(Math.IEEEremainder(first + lon, 360), lat);
    notes.add("%s: maps are computed in %s".formatted(table.name(), utm));
    return utm;
  }

  private void tellAccuracy(CrsTransform transform) {
    if (transform.accuracyM() > 0) {
      notes.add(
          "%s: from %s to %s is good to about %s m"
              .formatted(table.name(), transform.from(), transform.to(), transform.accuracyM()));
    }
  }

  private Optional<Geometry> outline(
      CrsTransform transform, Geometry outline, String id, int index) {
    try {
      Geometry moved = transform.apply(outline);
      Optional<String> broken = OutlineCheck.problem(moved);
      broken.ifPresent(
          b -> problems.add("%s (green %s): %s", table.at(table.rows().get(index)), id, b));
      return broken.isPresent() ? Optional.empty() : Optional.of(moved);
    } catch (InputRefused e) {
      problems.add("%s (green %s): %s", table.at(table.rows().get(index)), id, e.getMessage());
      return Optional.empty();
    }
  }

  private RootZone[] soil() {
    String[] build = columns.texts("build");
    String[] grass = columns.texts("grass");
    double[] root = columns.numbers("root_mm");
    double[] capacity = columns.numbers("fc_pct");
    double[] wilt = columns.numbers("wp_pct");
    double[] pores = columns.numbers("poro_pct");
    RootZone[] soil = new RootZone[build.length];
    for (int i = 0; i < soil.length; i++) {
      soil[i] = new RootZone(build[i], grass[i], root[i], capacity[i], wilt[i], pores[i]);
    }
    return soil;
  }

  private Green.Boundary[] boundaries() {
    String[] source = columns.texts("bnd_src");
    double[] accuracy = columns.numbers("acc_m");
    Green.Boundary[] boundaries = new Green.Boundary[source.length];
    for (int i = 0; i < source.length; i++) {
      boundaries[i] = new Green.Boundary(source[i], accuracy[i]);
    }
    return boundaries;
  }

  private void tellOverlaps(List<Green> greens) {
    for (int i = 0; i < greens.size(); i++) {
      for (int j = 0; j < i; j++) {
        Geometry a = greens.get(j).outline();
        Geometry b = greens.get(i).outline();
        double shared =
            a.getEnvelopeInternal().intersects(b.getEnvelopeInternal())
                ? a.intersection(b).getArea()
                : 0;
        if (shared > 1e-3) {
          notes.add(
              String.format(
                  java.util.Locale.ROOT,
                  "%s: greens %s and %s overlap by %.2f m²",
                  table.name(),
                  greens.get(j).id(),
                  greens.get(i).id(),
                  shared));
        }
      }
    }
  }
}
