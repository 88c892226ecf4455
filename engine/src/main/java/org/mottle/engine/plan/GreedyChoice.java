package org.mottle.engine.plan;

import java.util.ArrayList;
import java.util.List;

/** Stations chosen one after the other, with means over the draws. Serves one thread. */
final class GreedyChoice {
  private final Criterion criterion;
  private final AreaPoints points;
  private final Positions sites;
  private final List<DrawField> fields;
  private final List<Pick> picks = new ArrayList<>();

  private record Pick(int site, double gain, double varianceDrop, StationReason why) {}

  GreedyChoice(Criterion criterion, AreaPoints points, Positions sites, List<DrawField> fields) {
    this.criterion = criterion;
    this.points = points;
    this.sites = sites;
    this.fields = fields;
  }

  Criterion criterion() {
    return criterion;
  }

  /** [site] what each would bring if it were taken next. */
  double[] gains() {
    double[] gain = new double[sites.size()];
    fields.forEach(f -> f.addGains(criterion, gain));
    for (int c = 0; c < gain.length; c++) {
      gain[c] /= fields.size();
    }
    return gain;
  }

  void take(int site, double gain) {
    StationReason why = reason(site);
    double before = meanVariance();
    fields.forEach(f -> f.take(site));
    picks.add(new Pick(site, gain, before - meanVariance(), why));
  }

  /** Against the mean of the green: how much more of a gamble, and how much less known. */
  private StationReason reason(int site) {
    double far = variance(site) / meanVariance();
    double near =
        criterion == Criterion.MEAN_VARIANCE
            ? 0
            : fields.stream().mapToDouble(f -> f.candidateLoss(site)).average().orElseThrow()
                * points.areaM2()
                / total();
    if (near >= 1 && far >= 1) {
      return StationReason.BOTH;
    }
    return near > far ? StationReason.NEAR_LIMIT : StationReason.FAR_FROM_READINGS;
  }

  /** Error variance at a site now, value². */
  double variance(int site) {
    return fields.stream().mapToDouble(f -> f.candidateVariance(site)).average().orElseThrow();
  }

  private double meanVariance() {
    return fields.stream().mapToDouble(DrawField::meanVariance).average().orElseThrow();
  }

  /** The criterion now: m² or value². */
  double total() {
    return criterion == Criterion.MEAN_VARIANCE
        ? meanVariance()
        : fields.stream().mapToDouble(DrawField::lossM2).average().orElseThrow();
  }

  /** The walk over the stations chosen, from the nearer end of the stations there are. */
  WalkOrder walk(Positions existing) {
    Positions chosen = sites.pick(picks.stream().map(Pick::site).toList());
    int last = existing.size() - 1;
    if (last < 0) {
      return WalkOrder.anywhere(chosen);
    }
    double fromLast = chosen.nearest(existing.x(last), existing.y(last));
    double fromFirst = chosen.nearest(existing.x(0), existing.y(0));
    int end = fromFirst < fromLast ? 0 : last;
    return WalkOrder.from(existing.x(end), existing.y(end), chosen);
  }

  /** In the order of rank. */
  List<NextStation> stations(double before, Positions existing) {
    int[] steps = walk(existing).steps();
    List<NextStation> stations = new ArrayList<>();
    for (int r = 0; r < picks.size(); r++) {
      Pick pick = picks.get(r);
      double gainM2 = criterion == Criterion.MISCLASSIFIED_AREA ? pick.gain : Double.NaN;
      stations.add(
          new NextStation(
              r + 1,
              sites.x(pick.site),
              sites.y(pick.site),
              new NextStation.Gain(gainM2, pick.varianceDrop, pick.gain / before),
              pick.why,
              steps[r] + 1));
    }
    return stations;
  }
}
