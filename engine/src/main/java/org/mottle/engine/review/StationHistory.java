package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Reading;

/**
 * What each station usually reads against its green: patterns of wet and dry persist, so a
 * station's past tells what to expect of it.
 *
 * <p>With r the reading less the median of its visit, p the correlation of r between two surveys at
 * one station (pooled over the record, r cut at three robust standard deviations), and n other
 * surveys with mean r̄, the expectation is n p / (1 + (n - 1) p) · r̄, and the variance that is
 * left 1 - n p² / (1 + (n - 1) p) of that of r: regression on the mean of n equally correlated
 * values.
 */
final class StationHistory {
  /** Fewer pairs of surveys do not tell the correlation. */
  private static final int LEAST_PAIRS = 30;

  /** Patterns do not persist better than this, whatever a short record shows. */
  private static final double MOST = 0.8;

  private static final double CUT = 3 * 1.4826;

  /** Named stations nearer than this are one, if their positions are no better than that, m. */
  private static final double SAME_PLACE_M = 1.5;

  /** Planned stations nearer than this are one, m. */
  private static final double SAME_PLAN_M = 0.3;

  private final double correlation;

  /** A place that has been read, as it was first seen. */
  private record Site(String id, boolean planned, double x, double y, double sd) {}

  /**
   * Readings of one visit against its median, with what their stations' past leads to expect.
   *
   * @param level median, % by volume
   * @param expected [n] of r, 0 where the station has no past
   * @param variance [n] share of the variance of r that is left
   */
  record Expected(double level, double[] expected, double[] variance) {}

  private final Map<Sheet, int[]> sites = new HashMap<>();
  private final Map<Sheet, Map<Integer, Double>> means = new HashMap<>();
  private final Map<String, List<Sheet>> byGreen = new HashMap<>();
  private final Map<Sheet, Double> levels = new HashMap<>();

  StationHistory(List<Sheet> sheets) {
    for (Sheet sheet : sheets) {
      byGreen.computeIfAbsent(sheet.visit.green().id(), k -> new ArrayList<>()).add(sheet);
    }
    byGreen.values().forEach(this::gather);
    this.correlation = correlation();
  }

  private void gather(List<Sheet> visits) {
    List<Site> known = new ArrayList<>();
    for (Sheet sheet : visits) {
      int[] own = new int[sheet.size()];
      Arrays.fill(own, -1);
      int[] rows = sheet.counting();
      double level = level(sheet, rows);
      Map<Integer, double[]> sums = new HashMap<>();
      for (int i : rows) {
        own[i] = site(known, sheet, i);
        double[] sum = sums.computeIfAbsent(own[i], k -> new double[2]);
        sum[0] += sheet.pct[i] - level;
        sum[1]++;
      }
      Map<Integer, Double> mean = new HashMap<>();
      sums.forEach((site, sum) -> mean.put(site, sum[0] / sum[1]));
      sites.put(sheet, own);
      means.put(sheet, mean);
      levels.put(sheet, level);
    }
  }

  /** Points of interest were chosen for being odd. */
  private static double level(Sheet sheet, int[] rows) {
    double[] values =
        Arrays.stream(rows)
            .filter(i -> sheet.reading(i).role() != Reading.Role.POINT_OF_INTEREST)
            .mapToDouble(i -> sheet.pct[i])
            .toArray();
    return values.length == 0 ? 0 : new Median().evaluate(values);
  }

  private static int site(List<Site> known, Sheet sheet, int i) {
    Reading r = sheet.reading(i);
    Optional<PlannedStation> plan = sheet.visit.planned(r);
    double sd = PlaceChecks.sd(r);
    Site site =
        new Site(
            r.label().stationId(),
            plan.isPresent(),
            plan.map(PlannedStation::x).orElse(r.x()),
            plan.map(PlannedStation::y).orElse(r.y()),
            Double.isNaN(sd) ? 0 : sd);
    for (int k = 0; k < known.size(); k++) {
      if (same(known.get(k), site)) {
        return k;
      }
    }
    known.add(site);
    return known.size() - 1;
  }

  private static boolean same(Site a, Site b) {
    if (a.id().isEmpty() || !a.id().equals(b.id())) {
      return false;
    }
    double reach =
        a.planned() && b.planned() ? SAME_PLAN_M : SAME_PLACE_M + 2 * Math.hypot(a.sd(), b.sd());
    return Math.hypot(a.x() - b.x(), a.y() - b.y()) <= reach;
  }

  private double correlation() {
    double[] all =
        means.values().stream()
            .flatMap(m -> m.values().stream())
            .mapToDouble(Math::abs)
            .sorted()
            .toArray();
    if (all.length == 0 || !(all[all.length / 2] > 0)) {
      return 0;
    }
    double cut = CUT * all[all.length / 2];
    double product = 0;
    double squares = 0;
    int pairs = 0;
    for (List<Sheet> visits : byGreen.values()) {
      for (int a = 0; a < visits.size(); a++) {
        Map<Integer, Double> first = means.get(visits.get(a));
        for (int b = 0; b < a; b++) {
          Map<Integer, Double> second = means.get(visits.get(b));
          for (Map.Entry<Integer, Double> e : first.entrySet()) {
            Double other = second.get(e.getKey());
            if (other != null) {
              double u = clip(e.getValue(), cut);
              double v = clip(other, cut);
              product += u * v;
              squares += (u * u + v * v) / 2;
              pairs++;
            }
          }
        }
      }
    }
    return pairs < LEAST_PAIRS || !(squares > 0)
        ? 0
        : Math.min(MOST, Math.max(0, product / squares));
  }

  private static double clip(double value, double cut) {
    return Math.max(-cut, Math.min(cut, value));
  }

  /** Correlation of a station's readings, against their green, between two surveys. */
  double persistence() {
    return correlation;
  }

  Expected expected(Sheet sheet) {
    int n = sheet.size();
    double[] expected = new double[n];
    double[] variance = new double[n];
    Arrays.fill(variance, 1);
    int[] own = sites.get(sheet);
    List<Sheet> visits = byGreen.get(sheet.visit.green().id());
    for (int i = 0; i < n && correlation > 0; i++) {
      if (own[i] < 0) {
        continue;
      }
      double sum = 0;
      int others = 0;
      for (Sheet visit : visits) {
        Double mean = visit == sheet ? null : means.get(visit).get(own[i]);
        if (mean != null) {
          sum += mean;
          others++;
        }
      }
      if (others > 0) {
        double inner = 1 + (others - 1) * correlation;
        expected[i] = correlation / inner * sum;
        variance[i] = 1 - others * correlation * correlation / inner;
      }
    }
    return new Expected(levels.get(sheet), expected, variance);
  }
}
