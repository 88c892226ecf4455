package org.mottle.export.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.mottle.engine.moisture.GravimetricCore;
import org.mottle.engine.moisture.SiteCurve;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads cores taken beside readings and makes the site's own curve of them: a table with {@code
 * vwc_raw} (the reading), {@code wet_g}, {@code dry_g}, {@code can_g} and {@code vol_cm3}.
 */
public final class CoresReader {
  static final List<String> NAMES = List.of("wet_g", "dry_g", "can_g", "vol_cm3");

  private CoresReader() {}

  /**
   * @throws InputRefused with every problem of the file, or when the cores make no curve
   */
  public static SiteCurve read(String file, InputOptions options) {
    Path path = Path.of(file);
    if (!Files.isRegularFile(path)) {
      throw new InputRefused("%s: no such file".formatted(file));
    }
    FeatureTable table;
    try {
      table = new CsvReader(path, options).readCells();
    } catch (IOException e) {
      throw new InputRefused("%s cannot be read: %s".formatted(file, e.getMessage()));
    }
    Problems problems = new Problems();
    Columns columns = new Columns(table, options, problems);
    for (String name : List.of("vwc_raw", "wet_g", "dry_g", "can_g", "vol_cm3")) {
      problems.require(
          columns.find(name).isPresent(),
          "%s has no column %s; its columns are %s",
          table.name(),
          name,
          columns.named());
    }
    problems.throwIfAny();
    double[] raw = columns.numbers("vwc_raw");
    double[] wet = columns.numbers("wet_g");
    double[] dry = columns.numbers("dry_g");
    double[] can = columns.numbers("can_g");
    double[] volume = columns.numbers("vol_cm3");
    double[] core = new double[raw.length];
    for (int i = 0; i < raw.length; i++) {
      try {
        core[i] = new GravimetricCore(wet[i], dry[i], can[i], volume[i]).pct();
      } catch (IllegalArgumentException e) {
        problems.add(
            "%s: %s; weigh it again, or delete the row",
            table.at(table.rows().get(i)), e.getMessage());
      }
      problems.require(
          !Double.isNaN(raw[i]),
          "%s: no reading (vwc_raw) beside the core",
          table.at(table.rows().get(i)));
    }
    problems.throwIfAny();
    try {
      return SiteCurve.of(raw, core);
    } catch (IllegalArgumentException e) {
      throw new InputRefused("%s: %s".formatted(table.name(), e.getMessage()));
    }
  }
}
