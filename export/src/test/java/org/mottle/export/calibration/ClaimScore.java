package org.mottle.export.calibration;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A variogram that was found, beside the true one.
 *
 * @param claim what was found
 * @param rangeM true practical range, m
 * @param nugget true variance of one insertion, %²; NaN where it differs from green to green
 */
record ClaimScore(VariogramClaim claim, double rangeM, double nugget) {

  static ClaimScore of(VariogramClaim claim, List<GreenCase> course) {
    List<Known> pool =
        course.stream().map(GreenCase::known).filter(k -> k.pool().equals(claim.pool())).toList();
    if (pool.isEmpty()) {
      throw new IllegalArgumentException("there is no pool '" + claim.pool() + "'");
    }
    double[] nuggets = pool.stream().mapToDouble(Known::nugget).distinct().toArray();
    return new ClaimScore(
        claim, pool.get(0).rangeM(), nuggets.length == 1 ? nuggets[0] : Double.NaN);
  }

  /** Of many claims: how far from the truth, and how often their intervals hold it. */
  static String row(List<ClaimScore> scores) {
    double[] range = scores.stream().mapToDouble(s -> s.claim().rangeM() / s.rangeM()).toArray();
    double[] nugget =
        scores.stream()
            .filter(s -> !Double.isNaN(s.nugget()))
            .mapToDouble(s -> s.claim().nugget() / s.nugget())
            .toArray();
    return String.join(
        " | ",
        "" + scores.size(),
        quantiles(range),
        held(
            scores.stream().map(s -> s.claim().rangeSpan().map(i -> i.holds(s.rangeM()))).toList()),
        quantiles(nugget),
        held(
            scores.stream()
                .filter(s -> !Double.isNaN(s.nugget()))
                .map(s -> s.claim().nuggetSpan().map(i -> i.holds(s.nugget())))
                .toList()));
  }

  private static String held(List<Optional<Boolean>> held) {
    long with = held.stream().filter(Optional::isPresent).count();
    long in = held.stream().filter(h -> h.orElse(false)).count();
    return with == 0 ? "–" : String.format(Locale.ROOT, "%d of %d", in, with);
  }

  private static String quantiles(double[] values) {
    if (values.length == 0) {
      return "–";
    }
    Arrays.sort(values);
    return String.format(
        Locale.ROOT, "%.2f (%.2f–%.2f)", at(values, 0.5), at(values, 0.1), at(values, 0.9));
  }

  private static double at(double[] sorted, double share) {
    return sorted[(int) Math.round(share * (sorted.length - 1))];
  }
}
