package org.mottle.engine.order;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Refusal;

/**
 * Where the readings of a visit were taken, as far as their order tells.
 *
 * @param visit the readings
 * @param placed in order
 * @param notPlaced the rest, in order, each with its reason
 * @param skipped ids of stations at which nothing was read, in walking order
 * @param doubled ids of stations read more often than planned though the log does not number the
 *     further insertion, in walking order
 * @param pace what the gaps in time were compared with
 * @param remarks what the user should know, in words
 */
public record Alignment(
    OrderedVisit visit,
    List<Placed> placed,
    List<NotPlaced> notPlaced,
    List<String> skipped,
    List<String> doubled,
    Pace pace,
    List<String> remarks) {

  public Alignment {
    placed = List.copyOf(placed);
    notPlaced = List.copyOf(notPlaced);
    skipped = List.copyOf(skipped);
    doubled = List.copyOf(doubled);
    remarks = List.copyOf(remarks);
  }

  /**
   * @param index place of the reading in the visit, from 0
   * @param sequence its number in the log
   * @param stationId its station; empty along a line without stations
   * @param x east, m
   * @param y north, m
   * @param sdM standard error per axis, m
   * @param probability that the station is the right one; NaN along a line
   * @param inferred whether the station is a guess from counts or times rather than sure
   */
  public record Placed(
      int index,
      int sequence,
      String stationId,
      double x,
      double y,
      double sdM,
      double probability,
      boolean inferred) {}

  /**
   * @param index place of the reading in the visit, from 0
   * @param sequence its number in the log
   * @param why what stands in the way, and what would help
   */
  public record NotPlaced(int index, int sequence, Refusal why) {}

  /**
   * @param paceMS pace between stations, m/s
   * @param insertionS time of a first insertion, s
   * @param relativeSd scatter of either about that, as a share
   * @param gaps how many gaps in time it rests on; 0 when it is only assumed
   */
  public record Pace(double paceMS, double insertionS, double relativeSd, int gaps) {}

  /** Why the visit and the plan do not belong together; empty when they do. */
  public Optional<Refusal> refusal() {
    return placed.isEmpty() && !notPlaced.isEmpty()
        ? Optional.of(notPlaced.get(0).why())
        : Optional.empty();
  }

  /** How many readings were placed by inference. */
  public long inferred() {
    return placed.stream().filter(Placed::inferred).count();
  }
}
