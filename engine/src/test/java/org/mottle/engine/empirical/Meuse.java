package org.mottle.engine.empirical;

import java.util.Arrays;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.reference.ReferenceTable;

/** The 155 soil samples of the meuse data set. */
public final class Meuse {
  private static final ReferenceTable POINTS = ReferenceTable.of("meuse_points");

  private Meuse() {}

  public static Observations of(String column) {
    return Observations.of(POINTS.numbers("x"), POINTS.numbers("y"), POINTS.numbers(column));
  }

  /** Residuals of log(zinc) from its least-squares line on the square root of the distance. */
  public static Observations residuals() {
    double[] v = POINTS.numbers("logzinc");
    double[] t = POINTS.numbers("sqrtdist");
    double meanV = Arrays.stream(v).average().orElseThrow();
    double meanT = Arrays.stream(t).average().orElseThrow();
    double cross = 0;
    double square = 0;
    for (int i = 0; i < v.length; i++) {
      cross += (t[i] - meanT) * (v[i] - meanV);
      square += (t[i] - meanT) * (t[i] - meanT);
    }
    for (int i = 0; i < v.length; i++) {
      v[i] -= meanV + cross / square * (t[i] - meanT);
    }
    return of("logzinc").withValues(v);
  }

  /** The lags of a table of gstat's, direction by direction with a tolerance of 22.5 degrees. */
  public static ExperimentalVariogram published(String name) {
    ReferenceTable table = ReferenceTable.of(name);
    boolean directional = name.contains("_dir_");
    return new ExperimentalVariogram(
        java.util.stream.IntStream.range(0, table.rows())
            .mapToObj(
                i ->
                    new Lag(
                        (long) table.number(i, "np"),
                        table.number(i, "dist"),
                        table.number(i, "gamma"),
                        directional ? Direction.of(table.number(i, "dir"), 22.5) : Direction.ALL))
            .toList());
  }
}
