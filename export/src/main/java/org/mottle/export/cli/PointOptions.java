package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.observation.Duplicates;
import org.mottle.engine.observation.Observations;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.PointTable;
import org.mottle.export.read.PointTableReader;
import org.mottle.export.read.PointTableReader.Missing;
import picocli.CommandLine.Option;

/** Options of the commands that work on any table of points. */
final class PointOptions {

  /** Points nearer than this share a place, m. */
  private static final double SAME_PLACE_M = 0.01;

  @Option(
      names = "--points",
      required = true,
      paramLabel = "FILE",
      description = "Table of points: CSV, GeoJSON, GeoPackage or shapefile, in metres.")
  String points;

  @Option(
      names = "--value",
      required = true,
      paramLabel = "COLUMN",
      description = "Column of the values.")
  String value;

  @Option(names = "--x", paramLabel = "COLUMN", description = "Column of the eastings; default x.")
  String x = "x";

  @Option(names = "--y", paramLabel = "COLUMN", description = "Column of the northings; default y.")
  String y = "y";

  @Option(
      names = "--log",
      description =
          "Work with the natural logarithm of the values; results stay on the logarithmic scale.")
  boolean log;

  @Option(
      names = "--duplicates",
      paramLabel = "NAME",
      description = "Points that share a place: reject, average or keep-first; default reject.")
  String duplicates = "reject";

  private DuplicatePolicy policy;

  private static final Set<String> DEGREES =
      Set.of("lon", "lat", "long", "lng", "longitude", "latitude");

  /** No survey in metres fits in this square; one in degrees does. */
  private static final double SMALLEST_EXTENT = 0.1;

  /**
   * Points with what is known of them.
   *
   * @param observations one a place
   */
  record Table(Observations observations) {}

  /**
   * Places to estimate.
   *
   * @param targets in the order of the file
   */
  record Places(Targets targets) {}

  void check(Problems problems) {
    policy =
        VariogramCommand.choice("--duplicates", duplicates, DuplicatePolicy.values(), problems);
  }

  /** Reads the points with the named covariates; coincident points as the policy says. */
  Table read(List<String> covariates, CommonOptions common) throws IOException {
    List<String> wanted = new ArrayList<>(covariates);
    wanted.add(0, value);
    PointTable table = PointTableReader.read(points, x, y, wanted, Missing.LEAVE_OUT);
    table.notes().forEach(note -> note(common, note));
    refuseDegrees(table);
    double[] values = log ? logarithms(table) : table.values().get(value);
    Observations observations =
        Observations.of(table.x(), table.y(), values)
            .withCovariates(covariates.stream().map(c -> table.values().get(c)).toList());
    Duplicates.Outcome outcome = Duplicates.resolve(observations, SAME_PLACE_M, policy);
    if (outcome instanceof Duplicates.Rejected rejected) {
      throw new InputRefused(coincident(table, observations, rejected.groups()));
    }
    Duplicates.Resolved resolved = (Duplicates.Resolved) outcome;
    if (resolved.merged() > 0) {
      note(common, resolved.merged() + " points that share a place with another: " + duplicates);
    }
    if (resolved.observations().size() < 2) {
      throw new InputRefused(
          "%s: %d point is too few; at least 2 places with a value are needed"
              .formatted(table.source(), resolved.observations().size()));
    }
    return new Table(resolved.observations());
  }

  /** Refuses values without variation, which have no variogram. */
  void refuseIfAllEqual(Observations observations) {
    double first = observations.value(0);
    if (Arrays.stream(observations.values()).allMatch(v -> v == first)) {
      throw new InputRefused(
          "%s: all %d values of %s are %s; a variogram needs values that differ"
              .formatted(Path.of(points).getFileName(), observations.size(), value, first));
    }
  }

  /** By the headings of the coordinates, or by places that would lie within a few centimetres. */
  private void refuseDegrees(PointTable table) {
    DoubleSummaryStatistics east = Arrays.stream(table.x()).summaryStatistics();
    DoubleSummaryStatistics north = Arrays.stream(table.y()).summaryStatistics();
    boolean named = DEGREES.contains(plain(x)) || DEGREES.contains(plain(y));
    boolean within =
        Math.max(Math.abs(east.getMin()), Math.abs(east.getMax())) <= 180
            && Math.max(Math.abs(north.getMin()), Math.abs(north.getMax())) <= 90;
    boolean tiny =
        table.size() > 2
            && east.getMax() - east.getMin() < SMALLEST_EXTENT
            && north.getMax() - north.getMin() < SMALLEST_EXTENT;
    if (within && (named || tiny)) {
      throw new InputRefused(
          String.format(
              Locale.ROOT,
              "%s: %s %s to %s and %s %s to %s are degrees, not metres; project the file to metres"
                  + " first, to the UTM zone of the points, say",
              table.source(),
              x,
              east.getMin(),
              east.getMax(),
              y,
              north.getMin(),
              north.getMax()));
    }
  }

  private static String plain(String heading) {
    return heading.strip().toLowerCase(Locale.ROOT);
  }

  private String coincident(PointTable table, Observations all, List<int[]> groups) {
    int[] first = groups.get(0);
    return String.format(
        Locale.ROOT,
        "%s: %d points share a place with another (within %s m); first: rows %d and %d, E %.2f N"
            + " %.2f, values %s and %s; use --duplicates average or keep-first, or correct the file",
        table.source(),
        groups.stream().mapToInt(g -> g.length - 1).sum(),
        SAME_PLACE_M,
        table.rows()[first[0]],
        table.rows()[first[1]],
        all.x(first[0]),
        all.y(first[0]),
        all.value(first[0]),
        all.value(first[1]));
  }

  private double[] logarithms(PointTable table) {
    double[] values = table.values().get(value);
    List<Integer> rows = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (!(values[i] > 0)) {
        rows.add(table.rows()[i]);
      }
    }
    if (!rows.isEmpty()) {
      throw new InputRefused(
          "%s: --log needs values above 0; %s is not in row %s"
              .formatted(table.source(), value, Problems.listed(rows)));
    }
    return Arrays.stream(values).map(Math::log).toArray();
  }

  /** Reads the places to estimate, with the covariates of the drift. */
  Places places(Path at, List<String> covariates, CommonOptions common) throws IOException {
    PointTable table = PointTableReader.read(at.toString(), x, y, covariates, Missing.KEEP);
    table.notes().forEach(note -> note(common, note));
    Problems problems = new Problems();
    for (String name : covariates) {
      List<Integer> rows = new ArrayList<>();
      double[] column = table.values().get(name);
      for (int i = 0; i < column.length; i++) {
        if (Double.isNaN(column[i])) {
          rows.add(table.rows()[i]);
        }
      }
      problems.require(
          rows.isEmpty(),
          "%s: no value of %s in row %s; the drift needs it at every place",
          table.source(),
          name,
          Problems.listed(rows));
    }
    problems.throwIfAny();
    refuseDegrees(table);
    return new Places(
        Targets.of(table.x(), table.y())
            .withCovariates(covariates.stream().map(c -> table.values().get(c)).toList()));
  }

  private static void note(CommonOptions common, String note) {
    if (!common.quiet) {
      System.err.println(note);
    }
  }
}
