package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.mottle.engine.check.Check;
import org.mottle.engine.survey.Refusal;

/**
 * Temporal stability (Vachaud, Passerat de Silans, Balabanis and Vauclin 1985, Soil Sci. Soc. Am.
 * J. 49:822). For station i in survey t, θ̄_t the mean of the survey:
 *
 * <pre>δ_it = (θ_it − θ̄_t) / θ̄_t    MRD_i = mean over t    SDRD_i = SD over t (n − 1)
 * ITS_i = √(MRD_i² + SDRD_i²)
 * </pre>
 *
 * The station of least ITS is the representative one: reading it alone tells most of the green's
 * mean. Between surveys r_s is Spearman's rank correlation, ties at their mean rank. θ̄_t is the
 * mean of the stations read in every survey, so that a station read now and then moves no other.
 *
 * @param stations those read often enough, in the order of the series
 * @param representative index among {@code stations}; the earlier of equals
 * @param correlations of every two surveys, in the order of the series
 * @param leftOut stations read too seldom
 */
public record TemporalStability(
    List<StationDifference> stations,
    int representative,
    List<RankCorrelation> correlations,
    List<String> leftOut)
    implements StabilityOutcome {
  private static final int FEWEST = 3;

  /**
   * How a station differs from the green's mean, as shares of it.
   *
   * @param station its name
   * @param times surveys in which it was read
   * @param mean MRD, mean relative difference
   * @param sd SDRD, its standard deviation over time
   * @param index ITS
   */
  public record StationDifference(
      String station, int times, double mean, double sd, double index) {}

  /**
   * @param survey the earlier
   * @param other the later
   * @param stations read in both
   * @param spearman r_s, −1 to 1; NaN below three stations or where all are equal
   */
  public record RankCorrelation(String survey, String other, int stations, double spearman) {}

  public TemporalStability {
    stations = List.copyOf(stations);
    correlations = List.copyOf(correlations);
    leftOut = List.copyOf(leftOut);
  }

  /** The station whose reading alone tells most of the green's mean. */
  public StationDifference representativeStation() {
    return stations.get(representative);
  }

  /** Of the stations read in every survey. */
  public static StabilityOutcome of(StationSeries series) {
    return of(series, 1);
  }

  /**
   * @param leastShare of the surveys in which a station must have been read, above 0; in two of
   *     them at least
   */
  public static StabilityOutcome of(StationSeries series, double leastShare) {
    Check.within("leastShare", leastShare, Double.MIN_VALUE, 1, "of the surveys");
    int surveys = series.surveys().size();
    List<Integer> always = readAtLeast(series, surveys);
    if (surveys < 2 || always.size() < FEWEST) {
      return new Refused(
          new Refusal(
              "relative differences need 2 surveys and %d stations read in all of them, had %d and %d"
                  .formatted(FEWEST, surveys, always.size()),
              "read the same stations, by the same names, in every survey"));
    }
    double[] mean = new double[surveys];
    for (int t = 0; t < surveys; t++) {
      int survey = t;
      mean[t] = always.stream().mapToDouble(i -> series.pct(i, survey)).average().orElseThrow();
      if (!(mean[t] > 0)) {
        return new Refused(
            new Refusal(
                "the mean of survey %s is %s %%, and relative differences divide by it"
                    .formatted(series.surveys().get(t), mean[t]),
                "check its readings"));
      }
    }
    int least = Math.max(2, (int) Math.ceil(leastShare * surveys - 1e-9));
    List<Integer> kept = readAtLeast(series, least);
    List<StationDifference> found = kept.stream().map(i -> difference(series, i, mean)).toList();
    int representative =
        IntStream.range(0, found.size())
            .boxed()
            .min(Comparator.comparingDouble(k -> found.get(k).index()))
            .orElseThrow();
    List<String> leftOut =
        IntStream.range(0, series.stations().size())
            .filter(i -> !kept.contains(i))
            .mapToObj(series.stations()::get)
            .toList();
    return new TemporalStability(found, representative, correlations(series), leftOut);
  }

  private static List<Integer> readAtLeast(StationSeries series, int times) {
    return IntStream.range(0, series.stations().size())
        .filter(i -> series.times(i) >= times)
        .boxed()
        .toList();
  }

  private static StationDifference difference(StationSeries series, int station, double[] mean) {
    double[] delta =
        IntStream.range(0, mean.length)
            .filter(t -> !Double.isNaN(series.pct(station, t)))
            .mapToDouble(t -> (series.pct(station, t) - mean[t]) / mean[t])
            .toArray();
    double middle = Arrays.stream(delta).average().orElseThrow();
    double squares = Arrays.stream(delta).map(d -> (d - middle) * (d - middle)).sum();
    double sd = Math.sqrt(squares / (delta.length - 1));
    return new StationDifference(
        series.stations().get(station), delta.length, middle, sd, Math.hypot(middle, sd));
  }

  private static List<RankCorrelation> correlations(StationSeries series) {
    List<RankCorrelation> found = new ArrayList<>();
    for (int a = 0; a < series.surveys().size(); a++) {
      for (int b = a + 1; b < series.surveys().size(); b++) {
        found.add(correlation(series, a, b));
      }
    }
    return found;
  }

  private static RankCorrelation correlation(StationSeries series, int a, int b) {
    int[] both =
        IntStream.range(0, series.stations().size())
            .filter(i -> !Double.isNaN(series.pct(i, a)) && !Double.isNaN(series.pct(i, b)))
            .toArray();
    double[] first = Arrays.stream(both).mapToDouble(i -> series.pct(i, a)).toArray();
    double[] second = Arrays.stream(both).mapToDouble(i -> series.pct(i, b)).toArray();
    double spearman =
        both.length < FEWEST ? Double.NaN : new SpearmansCorrelation().correlation(first, second);
    return new RankCorrelation(
        series.surveys().get(a), series.surveys().get(b), both.length, spearman);
  }
}
