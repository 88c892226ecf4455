package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * Share ρ of the pattern of a green that is the same in every survey, one for all greens: the
 * posterior over {@value #NODES} equal steps, from the restricted likelihood of all surveys of a
 * green together, summed over greens, under each of equally likely draws of the variogram; with the
 * prior Beta({@value #PRIOR_A}, {@value #PRIOR_B}), mean 0.6 and 90 % from 0.2 to 0.96, our choice.
 *
 * <p>Surveys of more than {@value #MOST} stations together are taken in runs of neighbours in time.
 * With fewer than {@value #ENOUGH} repeated stations the prior stands nearly alone, and that is
 * said. Immutable.
 */
public final class PersistentShare {
  private static final int NODES = 20;
  private static final double PRIOR_A = 1.8;
  private static final double PRIOR_B = 1.2;
  private static final int MOST = 200;

  /** Repeated stations from which the readings tell more than the prior. */
  static final int ENOUGH = 30;

  /** Stations of two surveys within this distance are repeats, m. */
  static final double REPEAT_M = 2.5;

  private final double[] posterior;
  private final int greens;
  private final int repeats;

  private PersistentShare(double[] posterior, int greens, int repeats) {
    this.posterior = posterior;
    this.greens = greens;
    this.repeats = repeats;
  }

  /** What is assumed before any reading. */
  static PersistentShare prior() {
    return new PersistentShare(shares(logPrior()), 0, 0);
  }

  /** One green in one run of surveys under one draw. */
  private record Task(int draw, RepeatedGreen part) {}

  /**
   * @param greens with two surveys or more, all with the same number of models
   * @param blurred the correlations of each green's models
   */
  static PersistentShare of(
      List<RepeatedGreen> greens, List<List<Blurred>> blurred, int threads, Progress progress) {
    if (greens.isEmpty()) {
      return prior();
    }
    int draws = greens.get(0).models().size();
    List<Task> tasks = new ArrayList<>();
    List<Blurred> tables = new ArrayList<>();
    int repeats = 0;
    for (int g = 0; g < greens.size(); g++) {
      repeats += repeats(greens.get(g).surveys());
      for (RepeatedGreen part : parts(greens.get(g))) {
        for (int d = 0; d < draws; d++) {
          tasks.add(new Task(d, part));
          tables.add(blurred.get(g).get(d));
        }
      }
    }
    double[] node = nodes();
    double[][] log = new double[tasks.size()][];
    Panels.run(
        log.length,
        1,
        threads,
        "share of the pattern that persists",
        progress,
        () ->
            (from, to) -> {
              for (int k = from; k < to; k++) {
                Task task = tasks.get(k);
                log[k] =
                    ShareLikelihood.of(
                        task.part.surveys(),
                        task.part.models().get(task.draw),
                        tables.get(k),
                        node);
              }
            });
    double[] posterior = new double[NODES];
    for (int d = 0; d < draws; d++) {
      double[] sum = logPrior();
      for (int k = 0; k < log.length; k++) {
        for (int i = 0; i < NODES && tasks.get(k).draw == d; i++) {
          sum[i] += log[k][i];
        }
      }
      double[] share = shares(sum);
      for (int i = 0; i < NODES; i++) {
        posterior[i] += share[i] / draws;
      }
    }
    return new PersistentShare(posterior, greens.size(), repeats);
  }

  /** Runs of surveys, in the order of time, that are small enough to be taken together. */
  private static List<RepeatedGreen> parts(RepeatedGreen green) {
    List<RepeatedGreen> parts = new ArrayList<>();
    int from = 0;
    int stations = 0;
    for (int s = 0; s < green.surveys().size(); s++) {
      int size = green.surveys().get(s).size();
      if (stations + size > MOST && s - from >= 2) {
        parts.add(green.part(from, s));
        from = s;
        stations = 0;
      }
      stations += size;
    }
    if (green.surveys().size() - from >= 2) {
      parts.add(green.part(from, green.surveys().size()));
    }
    return parts;
  }

  /** Stations of a survey that have one of the survey before it near them. */
  private static int repeats(List<SeenSurvey> surveys) {
    int repeats = 0;
    for (int s = 1; s < surveys.size(); s++) {
      Observations a = surveys.get(s - 1).observations();
      Observations b = surveys.get(s).observations();
      for (int i = 0; i < b.size(); i++) {
        boolean near = false;
        for (int j = 0; j < a.size() && !near; j++) {
          near = Math.hypot(a.x(j) - b.x(i), a.y(j) - b.y(i)) <= REPEAT_M;
        }
        repeats += near ? 1 : 0;
      }
    }
    return repeats;
  }

  /** Middles of the steps. */
  private static double[] nodes() {
    double[] node = new double[NODES];
    Arrays.setAll(node, i -> (i + 0.5) / NODES);
    return node;
  }

  private static double[] logPrior() {
    double[] log = new double[NODES];
    double[] node = nodes();
    Arrays.setAll(
        log, i -> (PRIOR_A - 1) * Math.log(node[i]) + (PRIOR_B - 1) * Math.log(1 - node[i]));
    return log;
  }

  /** To the sum 1, of what these are logarithms of. */
  private static double[] shares(double[] log) {
    double top = Arrays.stream(log).max().orElseThrow();
    double[] share = Arrays.stream(log).map(v -> Math.exp(v - top)).toArray();
    double total = Arrays.stream(share).sum();
    return Arrays.stream(share).map(v -> v / total).toArray();
  }

  /** The mean with its 90 % interval. */
  public Interval share() {
    double mean = 0;
    double[] node = nodes();
    for (int i = 0; i < NODES; i++) {
      mean += posterior[i] * node[i];
    }
    return new Interval(quantile(Interval.TAIL), mean, quantile(1 - Interval.TAIL));
  }

  /** Greens with two surveys or more behind it. */
  public int greens() {
    return greens;
  }

  /** Stations read again within {@value #REPEAT_M} m in the survey after. */
  public int repeats() {
    return repeats;
  }

  /** Whether it is an assumption rather than a finding. */
  public boolean assumed() {
    return repeats < ENOUGH;
  }

  /** In words, for the reader of a change. */
  public String words() {
    Interval i = share();
    return assumed()
        ? String.format(
            Locale.ROOT,
            "how much of a pattern persists is assumed (%.2f, 90 %% from %.2f to %.2f): %d stations"
                + " were read again, %d tell it",
            i.best(),
            i.low(),
            i.high(),
            repeats,
            ENOUGH)
        : String.format(
            Locale.ROOT,
            "%.2f of the pattern persists from survey to survey (90 %% from %.2f to %.2f; %d"
                + " greens, %d stations read again)",
            i.best(),
            i.low(),
            i.high(),
            greens,
            repeats);
  }

  /** [count] equally likely values, in an order that goes up and down. */
  double[] draws(int count) {
    double[] draw = new double[count];
    int step = step(count);
    for (int k = 0; k < count; k++) {
      draw[k] = quantile((k * step % count + 0.5) / count);
    }
    return draw;
  }

  /** Near the golden section of the count, without a common factor. */
  private static int step(int count) {
    int step = Math.max(1, (int) Math.round(0.618 * count));
    while (gcd(step, count) > 1) {
      step++;
    }
    return step;
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }

  /** The posterior is even within a step. */
  private double quantile(double probability) {
    double left = probability;
    for (int i = 0; i < NODES; i++) {
      if (left <= posterior[i] || i == NODES - 1) {
        return (i + Math.min(1, left / posterior[i])) / NODES;
      }
      left -= posterior[i];
    }
    throw new IllegalStateException("a posterior has nodes");
  }
}
