package org.mottle.engine.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.order.Alignment.NotPlaced;
import org.mottle.engine.order.Alignment.Pace;
import org.mottle.engine.order.Alignment.Placed;
import org.mottle.engine.survey.Refusal;

/** Turns the chances of the stations into places, and says what was skipped, doubled, inferred. */
final class AlignmentReport {

  private AlignmentReport() {}

  static Alignment of(
      OrderedVisit visit, StationPlan plan, OrderSettings settings, Pace pace, double[][] chance) {
    int[] path = path(chance);
    List<Placed> placed = new ArrayList<>();
    List<NotPlaced> notPlaced = new ArrayList<>();
    int[] read = new int[plan.stations().size()];
    int[] unnumbered = new int[read.length];
    for (int k = 0; k < path.length; k++) {
      OrderedVisit.OrderedReading reading = visit.readings().get(k);
      PlannedStation station = plan.stations().get(path[k]);
      read[path[k]]++;
      unnumbered[path[k]] += reading.replicate() == 1 ? 1 : 0;
      double p = Math.min(1, chance[k][path[k]]);
      double sd = sd(plan, path[k], chance[k], settings.placedSdM());
      if (sd > settings.worstSdM()) {
        notPlaced.add(new NotPlaced(k, reading.sequence(), unsure(reading, station, p, sd)));
      } else {
        placed.add(
            new Placed(
                k,
                reading.sequence(),
                station.id(),
                station.x(),
                station.y(),
                sd,
                p,
                p < settings.inferredBelow()));
      }
    }
    List<String> skipped = new ArrayList<>();
    List<String> doubled = new ArrayList<>();
    for (int i = 0; i < read.length; i++) {
      PlannedStation station = plan.stations().get(i);
      if (read[i] == 0) {
        skipped.add(station.id());
      }
      if (unnumbered[i] > 1 && read[i] > station.insertions()) {
        doubled.add(station.id());
      }
    }
    List<String> remarks = remarks(visit, placed, skipped, doubled);
    return new Alignment(visit, placed, notPlaced, skipped, doubled, pace, remarks);
  }

  /** The path that never goes back with the largest sum of chances. */
  private static int[] path(double[][] chance) {
    int m = chance.length;
    int n = chance[0].length;
    double[][] best = new double[m][n];
    int[][] from = new int[m][n];
    for (int k = 0; k < m; k++) {
      int leader = 0;
      for (int i = 0; i < n; i++) {
        if (k > 0 && best[k - 1][i] > best[k - 1][leader]) {
          leader = i;
        }
        from[k][i] = leader;
        best[k][i] = chance[k][i] + (k > 0 ? best[k - 1][leader] : 0);
      }
    }
    int[] path = new int[m];
    for (int i = 1; i < n; i++) {
      path[m - 1] = best[m - 1][i] > best[m - 1][path[m - 1]] ? i : path[m - 1];
    }
    for (int k = m - 1; k > 0; k--) {
      path[k - 1] = from[k][path[k]];
    }
    return path;
  }

  private static double sd(StationPlan plan, int at, double[] chance, double placedSdM) {
    PlannedStation station = plan.stations().get(at);
    double spread = 0;
    for (int i = 0; i < chance.length; i++) {
      PlannedStation other = plan.stations().get(i);
      double dx = other.x() - station.x();
      double dy = other.y() - station.y();
      spread += chance[i] * (dx * dx + dy * dy);
    }
    return Math.sqrt(placedSdM * placedSdM + spread / 2);
  }

  private static Refusal unsure(
      OrderedVisit.OrderedReading reading, PlannedStation station, double p, double sd) {
    return new Refusal(
        String.format(
            Locale.ROOT,
            "reading %d is at station %s with a chance of %.0f %% only, its place known to %.1f m",
            reading.sequence(),
            station.id(),
            100 * p,
            sd),
        "give its station id, its position, or the times of the readings");
  }

  private static List<String> remarks(
      OrderedVisit visit, List<Placed> placed, List<String> skipped, List<String> doubled) {
    List<String> remarks = new ArrayList<>();
    if (!skipped.isEmpty()) {
      remarks.add("skipped, as far as can be told: station " + String.join(", ", skipped));
    }
    if (!doubled.isEmpty()) {
      remarks.add("read twice, as far as can be told: station " + String.join(", ", doubled));
    }
    long inferred = placed.stream().filter(Placed::inferred).count();
    if (inferred > 0) {
      remarks.add("stations of %d of %d readings are inferred".formatted(inferred, visit.size()));
    }
    if (!visit.backwards().isEmpty()) {
      remarks.add("times run backwards at reading " + visit.backwards() + " and were not used");
    }
    if (!visit.timed() && (inferred > 0 || !skipped.isEmpty())) {
      remarks.add("there are no times: only the count of readings was compared with the plan");
    }
    return remarks;
  }
}
