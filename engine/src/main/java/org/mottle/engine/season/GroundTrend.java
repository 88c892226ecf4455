package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.TrendCoefficient;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;

/**
 * Whether moisture follows the height of the ground on the greens together: one coefficient b in
 * mean + b · height for all, by generalised least squares under the variogram of each survey.
 * Surveys of one green repeat its pattern, so together they count as one. Against no trend
 *
 * <pre>
 * ΔAICc = z² - 2n / (n - 2) + 2n / (n - 1)      z = b / standard error, n greens' worth of data
 * </pre>
 *
 * with n the stations of one survey of every green (Hurvich & Tsai 1989). Above {@value #ASKED} the
 * greens together ask for the trend.
 *
 * @param coefficient b, % by volume a metre of height
 * @param standardError of b
 * @param greens how many
 * @param stations n
 */
public record GroundTrend(double coefficient, double standardError, int greens, int stations) {
  public static final double ASKED = 4;

  private static final int FEWEST = 8;

  /**
   * @param maps of all surveys
   * @param heights of the ground by green id, m; greens without are left out
   */
  public static GroundTrend of(
      List<Outcome.Mapped> maps, Map<String, Raster> heights, MappingSettings settings) {
    Map<String, List<double[]>> byGreen = new LinkedHashMap<>();
    Map<String, Integer> stations = new LinkedHashMap<>();
    for (Outcome.Mapped map : maps) {
      String green = map.subject().green().id();
      Raster height = heights.get(green);
      if (height != null && map.basis().variogram().flatMap(MapVariogram::pooled).isPresent()) {
        Observations o = with(map, height, settings);
        if (o.size() >= FEWEST) {
          TrendCoefficient b = coefficient(map, o);
          byGreen
              .computeIfAbsent(green, k -> new ArrayList<>())
              .add(new double[] {b.value(), b.standardError()});
          stations.merge(green, o.size(), Math::max);
        }
      }
    }
    double weights = 0;
    double sum = 0;
    for (List<double[]> surveys : byGreen.values()) {
      for (double[] b : surveys) {
        double weight = 1 / (b[1] * b[1]) / surveys.size();
        weights += weight;
        sum += weight * b[0];
      }
    }
    return new GroundTrend(
        sum / weights,
        Math.sqrt(1 / weights),
        byGreen.size(),
        stations.values().stream().mapToInt(Integer::intValue).sum());
  }

  /** Stations with a height, the nugget as variance of each. */
  private static Observations with(Outcome.Mapped map, Raster height, MappingSettings settings) {
    GreenReadings readings = GreenReadings.of(map, settings);
    Observations all = readings.observations();
    CellGrid grid = height.grid();
    double[] z = new double[all.size()];
    for (int i = 0; i < z.length; i++) {
      int column = (int) Math.floor((all.x(i) - grid.west()) / grid.cell());
      int row = (int) Math.floor((grid.north() - all.y(i)) / grid.cell());
      boolean on = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows();
      z[i] = on ? height.value(grid.index(row, column)) : Double.NaN;
    }
    int[] known = IntStream.range(0, z.length).filter(i -> !Double.isNaN(z[i])).toArray();
    double nugget = model(map).nugget();
    int[] insertions = readings.insertions();
    double[] own = Arrays.stream(known).mapToDouble(i -> z[i]).toArray();
    double middle = Arrays.stream(own).average().orElse(0);
    Observations kept = all.rows(known);
    // errors of position are left out: they hide a trend rather than feign one
    return Observations.of(kept.xs(), kept.ys(), kept.values())
        .withMeasurementVariance(
            Arrays.stream(known).mapToDouble(i -> nugget / insertions[i]).toArray())
        .withCovariates(List.of(Arrays.stream(own).map(v -> v - middle).toArray()));
  }

  private static NestedModel model(Outcome.Mapped map) {
    return map.basis()
        .variogram()
        .flatMap(MapVariogram::pooled)
        .orElseThrow()
        .model(map.subject().surveyId());
  }

  private static TrendCoefficient coefficient(Outcome.Mapped map, Observations o) {
    return Kriging.ordinary(model(map).withNugget(0))
        .with(Drift.covariates())
        .system(o)
        .trendCoefficients()
        .get(1);
  }

  /** Above 0 the trend is worth its parameter. */
  public double aiccGain() {
    double z = coefficient / standardError;
    double n = stations;
    return n < 4 ? Double.NaN : z * z - 4 * n / (n - 3) + 2 * n / (n - 2);
  }

  /** Whether the greens together ask for it. */
  public boolean asked() {
    return aiccGain() > ASKED;
  }

  public String words() {
    if (greens == 0) {
      return "whether moisture follows height is not known: no green has both";
    }
    return String.format(
        Locale.ROOT,
        "moisture %s height: %+.1f %% a metre (standard error %.1f) over %d greens together, AICc"
            + " better by %.1f%s",
        asked() ? "follows" : "does not clearly follow",
        coefficient,
        standardError,
        greens,
        aiccGain(),
        asked() ? "" : ", where 4 is asked for");
  }
}
