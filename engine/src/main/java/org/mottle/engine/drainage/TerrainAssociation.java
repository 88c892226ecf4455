package org.mottle.engine.drainage;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.stat.ranking.TiesStrategy;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.variogram.NestedModel;

/**
 * Whether moisture goes with an attribute of the ground (wetness index, height, slope) more than
 * chance would have it. Neighbouring places resemble each other in both, so that a plain test of
 * their correlation finds too much. Here Spearman's correlation is compared with that of {@code N}
 * unconditional realisations of the moisture at the same places, which have its variogram and know
 * nothing of the ground:
 *
 * <pre>p = (1 + number of realisations with r ≥ the one seen) / (N + 1)
 * </pre>
 *
 * exact for the variogram given (Barnard 1963; Besag and Clifford 1989). What the variogram does
 * not know of (its own error, errors of position) is left out. Ranks do not change when the
 * attribute is put on another scale, and the mean of the moisture does not matter.
 *
 * @param places at which both are known
 * @param correlation Spearman's r_s, ties at their mean rank
 * @param pWetterWhereHigher one-sided: chance of so high a correlation without association
 * @param pEitherWay two-sided
 * @param realisations N
 */
public record TerrainAssociation(
    int places, double correlation, double pWetterWhereHigher, double pEitherWay, int realisations)
    implements AssociationOutcome {
  /** Fewer leave the p value too coarse. */
  public static final int LEAST_REALISATIONS = 499;

  private static final int FEWEST_PLACES = 8;

  /** A correlation that is the same but for rounding counts as reached. */
  private static final double SAME = 1e-12;

  /**
   * At the stations of a survey.
   *
   * @param stations moisture, % by volume, with the variance of its measurement
   * @param attribute its value is that of the cell a station lies in; stations outside, or on a
   *     cell without value, are left out
   * @param model variogram of the moisture, bounded
   * @param realisations N, {@value #LEAST_REALISATIONS} at least
   * @param seed of the realisations
   */
  public static AssociationOutcome of(
      Observations stations,
      Raster attribute,
      NestedModel model,
      int realisations,
      long seed,
      Progress progress) {
    double[] values = new double[stations.size()];
    Arrays.setAll(values, i -> valueAt(attribute, stations.x(i), stations.y(i)));
    int[] known = IntStream.range(0, values.length).filter(i -> !Double.isNaN(values[i])).toArray();
    Observations kept = stations.rows(known);
    double[] own = Arrays.stream(known).mapToDouble(i -> values[i]).toArray();
    Optional<Refusal> refusal = refusal(own, kept.values(), model, realisations);
    if (refusal.isPresent()) {
      return new Refused(refusal.get());
    }
    return test(kept.values(), own, NullMoisture.at(kept, model), realisations, seed, progress);
  }

  /**
   * Over cells. The moisture must have the variogram given at the cells: readings of a dense
   * instrument, or one realisation. <b>Not a kriged map</b>: that is smoother than its variogram,
   * and would be found associated with too much; test its stations.
   *
   * @param moisture % by volume
   * @param attribute on the same grid
   */
  public static AssociationOutcome ofCells(
      Raster moisture,
      Raster attribute,
      NestedModel model,
      int realisations,
      long seed,
      Progress progress) {
    if (!moisture.grid().equals(attribute.grid())) {
      return new Refused(
          new Refusal(
              "moisture lies on %s, the attribute on %s"
                  .formatted(moisture.grid(), attribute.grid()),
              "bring both to one grid"));
    }
    int[] cells =
        IntStream.range(0, moisture.grid().size())
            .filter(i -> moisture.has(i) && attribute.has(i))
            .toArray();
    double[] pct = Arrays.stream(cells).mapToDouble(moisture::value).toArray();
    double[] own = Arrays.stream(cells).mapToDouble(attribute::value).toArray();
    Optional<Refusal> refusal = refusal(own, pct, model, realisations);
    if (refusal.isPresent()) {
      return new Refused(refusal.get());
    }
    NullMoisture.Attempt attempt = NullMoisture.over(moisture.grid(), cells, model);
    return attempt.refusal().isPresent()
        ? new Refused(attempt.refusal().get())
        : test(pct, own, attempt.moisture(), realisations, seed, progress);
  }

  private static double valueAt(Raster raster, double x, double y) {
    CellGrid grid = raster.grid();
    int column = (int) Math.floor((x - grid.west()) / grid.cell());
    int row = (int) Math.floor((grid.north() - y) / grid.cell());
    boolean inside = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows();
    return inside ? raster.value(row, column) : Double.NaN;
  }

  private static Optional<Refusal> refusal(
      double[] attribute, double[] moisture, NestedModel model, int realisations) {
    if (realisations < LEAST_REALISATIONS) {
      throw new IllegalArgumentException(
          "realisations must be %d or more, was %d".formatted(LEAST_REALISATIONS, realisations));
    }
    if (!model.bounded() || !(model.sill() > 0)) {
      return Optional.of(
          new Refusal(
              "realisations need a variogram that levels off above 0, was " + model,
              "use a bounded model"));
    }
    if (attribute.length < FEWEST_PLACES) {
      return Optional.of(
          new Refusal(
              "%d places have both moisture and the attribute, %d are needed"
                  .formatted(attribute.length, FEWEST_PLACES),
              "check that the terrain covers the stations"));
    }
    if (constant(attribute) || constant(moisture)) {
      return Optional.of(
          new Refusal(
              (constant(attribute) ? "the attribute" : "the moisture") + " is the same everywhere",
              "there is nothing to go with it"));
    }
    return Optional.empty();
  }

  private static boolean constant(double[] values) {
    return Arrays.stream(values).allMatch(v -> v == values[0]);
  }

  private static TerrainAssociation test(
      double[] moisture,
      double[] attribute,
      NullMoisture none,
      int realisations,
      long seed,
      Progress progress) {
    double[] rank = ranks(attribute);
    PearsonsCorrelation pearson = new PearsonsCorrelation();
    double seen = pearson.correlation(ranks(moisture), rank);
    NullMoisture.Draws draws = none.newDraws(seed);
    int higher = 0;
    int lower = 0;
    for (int r = 0; r < realisations; r++) {
      progress.check();
      double drawn = pearson.correlation(ranks(draws.next()), rank);
      higher += drawn >= seen - SAME ? 1 : 0;
      lower += drawn <= seen + SAME ? 1 : 0;
      progress.report("association", r + 1L, realisations);
    }
    double up = (1.0 + higher) / (realisations + 1);
    double down = (1.0 + lower) / (realisations + 1);
    return new TerrainAssociation(
        moisture.length, seen, up, Math.min(1, 2 * Math.min(up, down)), realisations);
  }

  private static double[] ranks(double[] values) {
    return new NaturalRanking(TiesStrategy.AVERAGE).rank(values);
  }
}
