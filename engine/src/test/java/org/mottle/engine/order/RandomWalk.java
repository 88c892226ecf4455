package org.mottle.engine.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Reading;

/**
 * A walk over a random plan on 500 m2 with up to two stations skipped and two read twice, half of
 * the second readings not numbered as such; a further insertion takes 0.6 of the time of a first
 * one; pace and handling scatter from leg to leg and from walk to walk.
 */
record RandomWalk(StationPlan plan, OrderedVisit visit, int[] truth) {

  static RandomWalk of(long seed, double walkScatter, double scatter, boolean timed) {
    Random random = new Random(seed);
    int n = 12 + random.nextInt(14);
    StationPlan plan = plan(random, n);
    List<Integer> walked = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      walked.add(i);
    }
    for (int s = random.nextInt(3); s > 0; s--) {
      walked.remove(random.nextInt(walked.size()));
    }
    List<Integer> doubled = new ArrayList<>(walked);
    for (int d = random.nextInt(3); d > 0; d--) {
      int station = walked.get(random.nextInt(walked.size()));
      doubled.add(doubled.indexOf(station), station);
    }
    double pace = 1.2 * Math.exp(walkScatter * random.nextGaussian());
    double handling = 20 * Math.exp(walkScatter * random.nextGaussian());
    List<OrderedVisit.OrderedReading> readings = new ArrayList<>();
    double clock = 1000;
    int replicate = 1;
    for (int k = 0; k < doubled.size(); k++) {
      boolean again = k > 0 && doubled.get(k).equals(doubled.get(k - 1));
      if (k > 0) {
        double stand = again ? 0.6 * handling : handling;
        double leg = metres(plan, doubled.get(k - 1), doubled.get(k)) / pace;
        clock += Math.max(1, stand * (1 + scatter * random.nextGaussian()));
        clock += leg * Math.exp(scatter * random.nextGaussian());
      }
      replicate = again && random.nextBoolean() ? replicate + 1 : 1;
      double time = timed ? Math.rint(clock) : Double.NaN;
      readings.add(new OrderedVisit.OrderedReading(k + 1, replicate, time));
    }
    int[] truth = doubled.stream().mapToInt(Integer::intValue).toArray();
    return new RandomWalk(plan, new OrderedVisit("S1", "G1", readings), truth);
  }

  /** Stations at least 2 m apart, each the nearest left to the one before. */
  private static StationPlan plan(Random random, int n) {
    List<double[]> left = new ArrayList<>();
    while (left.size() < n) {
      double[] p = {25 * random.nextDouble(), 20 * random.nextDouble()};
      if (left.stream().allMatch(q -> Math.hypot(p[0] - q[0], p[1] - q[1]) > 2)) {
        left.add(p);
      }
    }
    List<PlannedStation> walk = new ArrayList<>();
    double[] here = {0, 0};
    while (!left.isEmpty()) {
      double[] next = left.get(0);
      for (double[] p : left) {
        double d = Math.hypot(p[0] - here[0], p[1] - here[1]);
        next = d < Math.hypot(next[0] - here[0], next[1] - here[1]) ? p : next;
      }
      left.remove(next);
      here = next;
      String id = Integer.toString(walk.size() + 1);
      walk.add(new PlannedStation(id, here[0], here[1], Reading.Role.PLAN, 1));
    }
    return new StationPlan("base", "G1", walk);
  }

  private static double metres(StationPlan plan, int i, int j) {
    PlannedStation a = plan.stations().get(i);
    PlannedStation b = plan.stations().get(j);
    return Math.hypot(b.x() - a.x(), b.y() - a.y());
  }

  /** How many readings an alignment puts to the right station. */
  int right(Alignment alignment) {
    int right = 0;
    for (Alignment.Placed placed : alignment.placed()) {
      String id = plan.stations().get(truth[placed.index()]).id();
      right += placed.stationId().equals(id) ? 1 : 0;
    }
    return right;
  }
}
