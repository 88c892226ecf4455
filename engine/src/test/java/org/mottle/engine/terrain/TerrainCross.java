package org.mottle.engine.terrain;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.StringTokenizer;
import java.util.function.IntToDoubleFunction;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/**
 * Writes what .ci/cross-terrain.sh compares with other programs, and times a large model.
 *
 * <pre>
 *   random OUT.asc COLUMNS ROWS SEED    a random surface
 *   dump IN.asc FOLDER                  filled, slope, aspect, steepest, multiple .asc; hollows.csv
 *   time COLUMNS ROWS SEED              seconds of each step on an invented model
 * </pre>
 */
final class TerrainCross {
  private TerrainCross() {}

  public static void main(String[] arguments) throws IOException {
    switch (arguments[0]) {
      case "random" -> write(Path.of(arguments[1]), invented(arguments, 2));
      case "dump" -> dump(read(Path.of(arguments[1])), Path.of(arguments[2]));
      case "time" -> time(invented(arguments, 1));
      default -> throw new IllegalArgumentException("random, dump or time, was " + arguments[0]);
    }
  }

  private static ElevationModel invented(String[] arguments, int at) {
    return Grounds.rough(
        Integer.parseInt(arguments[at]),
        Integer.parseInt(arguments[at + 1]),
        0.25,
        Long.parseLong(arguments[at + 2]));
  }

  private static void dump(ElevationModel model, Path folder) throws IOException {
    Files.createDirectories(folder);
    CellGrid grid = model.grid();
    PriorityFlood flood = PriorityFlood.of(model);
    GroundSlope slope = GroundSlope.of(model);
    ContributingArea single = ContributingArea.steepest(FlowDirection.steepest(flood));
    ContributingArea shared = ContributingArea.multiple(flood);
    write(folder.resolve("filled.asc"), grid, flood::filled);
    write(folder.resolve("slope.asc"), grid, slope::degrees);
    write(folder.resolve("aspect.asc"), grid, slope::aspect);
    write(folder.resolve("steepest.asc"), grid, single::areaM2);
    write(folder.resolve("multiple.asc"), grid, shared::areaM2);
    try (BufferedWriter out = Files.newBufferedWriter(folder.resolve("hollows.csv"))) {
      out.write("area_m2,volume_l,deepest_m\n");
      for (Depression one : Depressions.of(flood, 0, new GeometryFactory())) {
        out.write(one.areaM2() + "," + one.volumeLitres() + "," + one.deepestM() + "\n");
      }
    }
  }

  private static void time(ElevationModel model) {
    long start = System.nanoTime();
    double noise = ElevationNoise.sdM(model);
    start = lap("noise", start);
    double sigma = Smoothing.sigmaM(model.grid().cell(), noise, 0.002);
    ElevationModel smooth = Smoothing.gaussian(model, sigma);
    start = lap("smoothing, sigma %.2f m".formatted(sigma), start);
    GroundSlope slope = GroundSlope.of(smooth);
    start = lap("slope", start);
    double hollow = 0;
    for (int i = 0; i < model.grid().size(); i++) {
      double sum = GroundCurvature.at(smooth, i).sum();
      hollow += sum > 0 ? 1 : 0;
    }
    start = lap("curvature", start);
    PriorityFlood flood = PriorityFlood.of(smooth);
    start = lap("flood", start);
    int hollows = Depressions.of(flood, noise, new GeometryFactory()).size();
    start = lap("hollows", start);
    FlowDirection flow = FlowDirection.steepest(flood);
    start = lap("directions", start);
    double single = ContributingArea.steepest(flow).leavingM2();
    start = lap("area, steepest", start);
    ContributingArea area = ContributingArea.multiple(flood);
    start = lap("area, multiple", start);
    Raster index = WetnessIndex.of(area, slope);
    lap("wetness index", start);
    double total = model.grid().size() * model.grid().cell() * model.grid().cell();
    boolean kept =
        Math.abs(single - total) < 1e-6 * total
            && Math.abs(area.leavingM2() - total) < 1e-6 * total;
    if (!kept || hollows == 0 || hollow == 0 || !index.has(model.grid().columns() + 1)) {
      throw new IllegalStateException("the timed work went wrong: hollows " + hollows);
    }
    System.out.printf("%d cells, %d hollows, noise %.4f m%n", model.grid().size(), hollows, noise);
  }

  private static long lap(String step, long start) {
    long now = System.nanoTime();
    System.out.printf("%-28s %6.2f s%n", step, (now - start) / 1e9);
    return now;
  }

  private static ElevationModel read(Path file) throws IOException {
    try (BufferedReader in = Files.newBufferedReader(file)) {
      java.util.Map<String, Double> head = new java.util.HashMap<>();
      String line = in.readLine();
      while (Character.isLetter(line.trim().charAt(0))) {
        String[] words = line.trim().split("\\s+");
        head.put(words[0].toLowerCase(java.util.Locale.ROOT), Double.parseDouble(words[1]));
        line = in.readLine();
      }
      int columns = head.get("ncols").intValue();
      int rows = head.get("nrows").intValue();
      double cell = head.get("cellsize");
      double north = head.get("yllcorner") + rows * cell;
      double[] z = new double[columns * rows];
      int n = 0;
      while (line != null) {
        StringTokenizer words = new StringTokenizer(line);
        while (words.hasMoreTokens()) {
          double value = Double.parseDouble(words.nextToken());
          z[n++] = value == head.getOrDefault("nodata_value", -9999.0) ? Double.NaN : value;
        }
        line = in.readLine();
      }
      return ElevationModel.of(
          new Raster(new CellGrid(head.get("xllcorner"), north, cell, columns, rows), z));
    }
  }

  private static void write(Path file, ElevationModel model) throws IOException {
    write(file, model.grid(), i -> Math.rint(model.height(i) * 1e3) / 1e3);
  }

  private static void write(Path file, CellGrid grid, IntToDoubleFunction value)
      throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("ncols " + grid.columns() + "\nnrows " + grid.rows() + "\n");
      out.write("xllcorner " + grid.west() + "\nyllcorner " + grid.south() + "\n");
      out.write("cellsize " + grid.cell() + "\nNODATA_value -9999\n");
      for (int i = 0; i < grid.size(); i++) {
        double v = value.applyAsDouble(i);
        out.write(Double.isNaN(v) ? "-9999" : Double.toString(v));
        out.write((i + 1) % grid.columns() == 0 ? "\n" : " ");
      }
    }
  }
}
