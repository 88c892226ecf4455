package org.mottle.engine.population;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** The low readings of one survey, what lies beside them, and what would in other worlds. */
final class LowNeighbours {
  static final int NEAREST = 4;

  /** Standard deviation of the logarithm of a patch's radius from one station to the next. */
  private static final double RAGGED = 0.25;

  private static final double LONGEST = 3;

  private final StationValues values;
  private final boolean[] low;
  private final int[] plan;
  private final int[][] nearest;

  /** Mean probability that a low reading is not low. */
  private final double doubt;

  LowNeighbours(TwoFound found, int survey) {
    values = found.surveys().get(survey);
    int n = values.size();
    low = new boolean[n];
    double wrong = 0;
    int count = 0;
    for (int i = 0; i < n; i++) {
      low[i] = found.isLow(survey, i);
      if (low[i]) {
        wrong += 1 - found.membership(survey, i);
        count++;
      }
    }
    doubt = count == 0 ? 0 : wrong / count;
    plan = IntStream.range(0, n).filter(i -> !values.chosen(i)).toArray();
    nearest = new int[n][];
    for (int i : plan) {
      nearest[i] = Arrays.copyOf(values.nearestFirst(i), Math.min(NEAREST, n - 1));
    }
  }

  int planned() {
    return plan.length;
  }

  int lowPlanned() {
    return (int) Arrays.stream(plan).filter(i -> low[i]).count();
  }

  int lowChosen() {
    return (int) IntStream.range(0, low.length).filter(i -> low[i] && values.chosen(i)).count();
  }

  double observed() {
    return share(low);
  }

  /** Share of low readings among the nearest stations of the low planned ones. */
  private double share(boolean[] isLow) {
    int neighbours = 0;
    int joins = 0;
    for (int i : plan) {
      if (isLow[i]) {
        for (int j : nearest[i]) {
          joins += isLow[j] ? 1 : 0;
        }
        neighbours += nearest[i].length;
      }
    }
    return joins / (double) neighbours;
  }

  Draws draws(long seed) {
    return new Draws(seed);
  }

  /** Seeded draws of the two worlds; each gives the join count of one draw. */
  final class Draws {
    private final SplittableRandom random;
    private final int k = lowPlanned();
    private final int[] centres;

    private Draws(long seed) {
      random = new SplittableRandom(seed);
      int[] lowChosen =
          IntStream.range(0, low.length).filter(i -> low[i] && values.chosen(i)).toArray();
      centres = lowChosen.length > 0 ? lowChosen : plan;
    }

    double anywhere() {
      return share(labels(shuffled()));
    }

    double patch() {
      double azimuth = Math.PI * random.nextDouble();
      double cos = Math.cos(azimuth);
      double sin = Math.sin(azimuth);
      double longer = 1 + (LONGEST - 1) * random.nextDouble();
      int from = centres[random.nextInt(centres.length)];
      int to = values.chosen(from) ? from : nearest[from][random.nextInt(nearest[from].length)];
      double x = values.x(from) + random.nextDouble() * (values.x(to) - values.x(from));
      double y = values.y(from) + random.nextDouble() * (values.y(to) - values.y(from));
      double[] reach = new double[low.length];
      for (int i : plan) {
        double along = cos * (values.x(i) - x) + sin * (values.y(i) - y);
        double across = cos * (values.y(i) - y) - sin * (values.x(i) - x);
        reach[i] = Math.hypot(along / longer, across) * Math.exp(RAGGED * gaussian());
      }
      int[] order =
          Arrays.stream(plan)
              .boxed()
              .sorted((a, b) -> Double.compare(reach[a], reach[b]))
              .mapToInt(Integer::intValue)
              .toArray();
      return share(labels(misread(order)));
    }

    /** Low readings that are wrong fall on any other station. */
    private int[] misread(int[] order) {
      for (int i = 0; i < k && k < order.length; i++) {
        if (random.nextDouble() < doubt) {
          swap(order, i, k + random.nextInt(order.length - k));
        }
      }
      return order;
    }

    private int[] shuffled() {
      int[] order = plan.clone();
      for (int i = 0; i < k; i++) {
        swap(order, i, i + random.nextInt(order.length - i));
      }
      return order;
    }

    private boolean[] labels(int[] order) {
      boolean[] labels = new boolean[low.length];
      for (int i = 0; i < low.length; i++) {
        labels[i] = values.chosen(i) && low[i];
      }
      for (int i = 0; i < k; i++) {
        labels[order[i]] = true;
      }
      return labels;
    }

    /** Box-Muller; the generator of Java 17 need not promise the bytes of its own. */
    private double gaussian() {
      double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
      return radius * Math.cos(2 * Math.PI * random.nextDouble());
    }

    private static void swap(int[] order, int i, int j) {
      int kept = order[i];
      order[i] = order[j];
      order[j] = kept;
    }
  }
}
