package org.mottle.engine.order;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.linearref.LengthIndexedLine;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.order.Alignment.NotPlaced;
import org.mottle.engine.order.Alignment.Pace;
import org.mottle.engine.order.Alignment.Placed;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.survey.Refusal;

/**
 * Puts readings of which only the order is known, and perhaps the time, to the stations of a plan.
 *
 * <p>A hidden Markov chain ({@link StationChain}) lets the walker pass stations by and read others
 * once more; gaps in time speak for distances ({@link GapModel}), whose pace, insertion time and
 * scatter are estimated from the visit in turn with the alignment ({@link PaceSearch}). Each
 * reading goes to the station on the path, never going back, that is expected to place the most
 * readings right. Its place is the station's, with the standard error per axis sqrt(0.7² + half the
 * mean squared distance of the possible stations from it). Cost: some 40 passes of the chain, 50 ms
 * a visit. Stateless.
 */
public final class StationOrder {
  private StationOrder() {}

  /** Aligns a visit with the stations of a plan, which stand in the order of the walk. */
  public static Alignment align(OrderedVisit visit, StationPlan plan, OrderSettings settings) {
    Pace pace = new Pace(settings.paceMS(), settings.insertionS(), PaceFit.START_SD, 0);
    if (visit.size() == 0) {
      List<String> all = plan.stations().stream().map(PlannedStation::id).toList();
      return new Alignment(visit, List.of(), List.of(), all, List.of(), pace, List.of());
    }
    Refusal why = PlanMatch.refusal(visit, plan);
    if (why != null) {
      return refused(visit, pace, why);
    }
    if (!visit.timed()) {
      double[][] chance = PaceSearch.chain(visit, plan, settings, pace).posterior().station();
      return AlignmentReport.of(visit, plan, settings, pace, chance);
    }
    PaceSearch.Result result = PaceSearch.of(visit, plan, settings);
    return AlignmentReport.of(visit, plan, settings, result.pace(), result.chance());
  }

  /**
   * Places along a line walked at equal steps, without a plan of stations: reading k of n at L k /
   * (n - 1), further insertions at the place of the first.
   */
  public static Alignment along(OrderedVisit visit, LineString line, OrderSettings settings) {
    Pace pace = new Pace(settings.paceMS(), settings.insertionS(), PaceFit.START_SD, 0);
    int places = 0;
    for (OrderedVisit.OrderedReading reading : visit.readings()) {
      places += reading.replicate() == 1 || places == 0 ? 1 : 0;
    }
    if (line.isEmpty() || places < 2) {
      return refused(
          visit,
          pace,
          new Refusal(
              "%d place(s) on a line of %.1f m cannot be spread along it"
                  .formatted(places, line.getLength()),
              "give the positions, or a line and at least 2 readings"));
    }
    LengthIndexedLine index = new LengthIndexedLine(line);
    List<Placed> placed = new ArrayList<>();
    int place = -1;
    for (int k = 0; k < visit.size(); k++) {
      OrderedVisit.OrderedReading reading = visit.readings().get(k);
      place += reading.replicate() == 1 || place < 0 ? 1 : 0;
      Coordinate at = index.extractPoint(line.getLength() * place / (places - 1));
      double sd = PositionSource.ORDER.jitterM();
      placed.add(new Placed(k, reading.sequence(), "", at.x, at.y, sd, Double.NaN, true));
    }
    List<String> remarks = List.of("places are spread evenly along the line, all inferred");
    return new Alignment(visit, placed, List.of(), List.of(), List.of(), pace, remarks);
  }

  private static Alignment refused(OrderedVisit visit, Pace pace, Refusal why) {
    List<NotPlaced> all = new ArrayList<>();
    for (int k = 0; k < visit.size(); k++) {
      all.add(new NotPlaced(k, visit.readings().get(k).sequence(), why));
    }
    return new Alignment(visit, List.of(), all, List.of(), List.of(), pace, List.of());
  }
}
