package org.mottle.engine.population;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.IntStream;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.variogram.Spherical;

/**
 * How far a low reading speaks for the ground beside it: range of a spherical correlation of the
 * low population's indicator, about the width of a spot.
 *
 * <p>Chosen on a grid between {@value #SHORTEST} m and one station spacing (the median distance of
 * a planned station to the next) by pairwise composite likelihood (Lindsay 1988, Contemp. Math.
 * 80:221-239) of the memberships within each survey, with known share p: two low with p² + rho p (1
 * - p), two others with (1 - p)² + rho p (1 - p). A planned station is paired with the nearest
 * point of interest only, given its state; two points of interest are not paired, for both were
 * chosen because they looked dry. Where neither end of the grid lies 1.92 below the best (half of
 * the 95 % point of chi-square; nominal only, for pairs are not independent) the range is not known
 * and {@value #USUAL} m is assumed. O(pairs).
 *
 * @param metres range, m
 * @param known whether the readings decided it
 * @param longest one station spacing, m
 * @param note in words
 */
public record SpotRange(double metres, boolean known, double longest, String note) {
  static final double SHORTEST = 1;
  static final double USUAL = 2;
  private static final double DROP = 1.92;
  private static final int GRID = 41;

  static SpotRange of(TwoFound found) {
    double longest = Math.max(SHORTEST, spacing(found));
    double[] range = new double[GRID];
    double[] support = new double[GRID];
    int best = 0;
    for (int g = 0; g < GRID; g++) {
      range[g] = SHORTEST + (longest - SHORTEST) * g / (GRID - 1);
      support[g] = support(found, range[g]);
      best = support[g] > support[best] ? g : best;
    }
    double lessAtEnds = support[best] - Math.min(support[0], support[GRID - 1]);
    if (lessAtEnds >= DROP) {
      return new SpotRange(range[best], true, longest, known(range[best]));
    }
    double usual = Math.min(USUAL, longest);
    return new SpotRange(usual, false, longest, assumed(usual, longest));
  }

  private static String known(double range) {
    return String.format(
        Locale.ROOT, "a low reading speaks for the ground within %.1f m, by the readings", range);
  }

  private static String assumed(double range, double longest) {
    return String.format(
        Locale.ROOT,
        "how wide the low spots are cannot be known from these stations (between %.0f and %.1f m);"
            + " %.1f m is assumed; readings 1 m apart round a low station would tell",
        SHORTEST,
        longest,
        range);
  }

  private static double spacing(TwoFound found) {
    double[] next =
        found.surveys().stream()
            .flatMapToDouble(
                values ->
                    IntStream.range(0, values.size())
                        .filter(i -> !values.chosen(i))
                        .mapToDouble(i -> toNextPlanned(values, i)))
            .filter(Double::isFinite)
            .toArray();
    return next.length == 0 ? USUAL : MixtureSearch.median(next);
  }

  private static double toNextPlanned(StationValues values, int i) {
    return Arrays.stream(values.nearestFirst(i))
        .filter(j -> !values.chosen(j))
        .mapToDouble(j -> values.distance(i, j))
        .findFirst()
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static double support(TwoFound found, double range) {
    double share = found.groundShare().share().best();
    double sum = 0;
    for (int s = 0; s < found.surveys().size(); s++) {
      StationValues values = found.surveys().get(s);
      BlurredModel correlation =
          BlurredModel.of(new Spherical(1, range), values.positionError().betweenStations());
      for (int i = 0; i < values.size(); i++) {
        if (values.chosen(i)) {
          continue;
        }
        int[] others = values.nearestFirst(i);
        boolean chosenSeen = false;
        for (int j : others) {
          double distance = values.distance(i, j);
          boolean take = values.chosen(j) ? !chosenSeen : i < j;
          chosenSeen |= values.chosen(j);
          if (take) {
            double rho = (1 - correlation.semivariance(distance));
            sum += pair(found.membership(s, i), found.membership(s, j), share, rho);
          }
        }
      }
    }
    return sum;
  }

  /**
   * Log-likelihood of a pair against that of two independent stations: expected over the
   * memberships. The state of a point of interest cancels, so one formula serves both kinds.
   */
  private static double pair(double a, double b, double share, double rho) {
    double both = 1 + rho * (1 - share) / share;
    double neither = 1 + rho * share / (1 - share);
    double unlike = 1 - rho;
    return Math.log(a * b * both + (1 - a) * (1 - b) * neither + (a + b - 2 * a * b) * unlike);
  }
}
