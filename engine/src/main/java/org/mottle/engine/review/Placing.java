package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.order.Alignment;
import org.mottle.engine.order.OrderSettings;
import org.mottle.engine.order.OrderedVisit;
import org.mottle.engine.order.StationOrder;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.track.ClockOffset;
import org.mottle.engine.track.ClockOutcome;
import org.mottle.engine.track.ClockSettings;
import org.mottle.engine.track.Track;
import org.mottle.engine.track.TrackPlace;
import org.mottle.engine.track.TrackPositions;

/**
 * Positions for readings that were logged without: by the planned station they name, by their time
 * in a receiver's track, by their order along the plan; each with its standard error. What cannot
 * be placed is listed. Immutable inputs; one use.
 */
public final class Placing {
  /** Of a receiver that averages, where the track's own error is not recorded, m per axis. */
  private static final double TRACK_SD_M = PositionSource.AVERAGED.jitterM();

  /** The value is noted within so much of the moment the receiver knows, s. */
  private static final double CLOCK_SD_S = 5;

  private final List<Conditions> conditions;
  private final List<StationPlan> plans;
  private final List<Track> tracks;
  private final List<Reading> placed = new ArrayList<>();
  private final List<Reading> left = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  /**
   * What placing came to.
   *
   * @param readings with positions
   * @param left without: they could not be placed
   * @param findings what was inferred, corrected or could not be done
   */
  public record Placed(List<Reading> readings, List<Reading> left, List<Finding> findings) {}

  public Placing(List<Conditions> conditions, List<StationPlan> plans, List<Track> tracks) {
    this.conditions = List.copyOf(conditions);
    this.plans = List.copyOf(plans);
    this.tracks = List.copyOf(tracks);
  }

  /** Places readings whose x and y are NaN. */
  public Placed place(List<Reading> unplaced) {
    Map<String, List<Reading>> bySurvey = new LinkedHashMap<>();
    for (Reading r : unplaced) {
      bySurvey.computeIfAbsent(r.label().surveyId(), k -> new ArrayList<>()).add(r);
    }
    bySurvey.forEach(this::survey);
    return new Placed(placed, left, findings);
  }

  private void survey(String survey, List<Reading> readings) {
    List<Reading> byTrack = new ArrayList<>();
    Map<String, List<Reading>> byGreen = new LinkedHashMap<>();
    for (Reading r : readings) {
      boolean track = !tracks.isEmpty() && source(r) == PositionSource.TRACK;
      if (track) {
        byTrack.add(r);
      } else {
        byGreen.computeIfAbsent(r.label().greenId(), k -> new ArrayList<>()).add(r);
      }
    }
    byGreen.forEach((green, own) -> green(survey, green, own));
    if (!byTrack.isEmpty()) {
      track(survey, byTrack);
    }
  }

  private static PositionSource source(Reading r) {
    return PositionSource.named(r.position().source()).orElse(PositionSource.ORDER);
  }

  /** The plans of a visit: those its record names, else those of its green. */
  public static List<StationPlan> plansOf(
      String survey, String green, List<Conditions> conditions, List<StationPlan> plans) {
    List<StationPlan> own = plans.stream().filter(p -> p.greenId().equals(green)).toList();
    Optional<String> named =
        conditions.stream()
            .filter(c -> c.isOf(survey, green) && !c.visit().planId().isEmpty())
            .map(c -> c.visit().planId())
            .findFirst();
    if (named.isEmpty()) {
      return own.size() == 1 ? own : List.of();
    }
    List<String> ids = List.of(named.get().split("\\+"));
    return own.stream().filter(p -> ids.contains(p.planId())).toList();
  }

  private void green(String survey, String green, List<Reading> readings) {
    List<StationPlan> own = plansOf(survey, green, conditions, plans);
    List<PlannedStation> stations = own.stream().flatMap(p -> p.stations().stream()).toList();
    List<Reading> unnamed = new ArrayList<>();
    for (Reading r : readings) {
      Optional<PlannedStation> station =
          stations.stream().filter(s -> s.id().equals(r.label().stationId())).findFirst();
      if (station.isPresent()) {
        placed.add(
            at(
                r,
                r.label().stationId(),
                station.get().x(),
                station.get().y(),
                PositionSource.PLANNED.jitterM()));
      } else {
        unnamed.add(r);
      }
    }
    if (unnamed.isEmpty()) {
      return;
    }
    if (stations.isEmpty()) {
      refuse(
          survey,
          green,
          unnamed,
          unnamed.size() + " readings have no position, and no plan says where they belong",
          "give the plan (and plan_id in the conditions), a track, or positions");
      return;
    }
    order(survey, green, unnamed, new StationPlan(own.get(0).planId(), green, stations));
  }

  private void order(String survey, String green, List<Reading> readings, StationPlan plan) {
    OrderedVisit visit =
        new OrderedVisit(
            survey,
            green,
            readings.stream()
                .map(
                    r ->
                        new OrderedVisit.OrderedReading(
                            r.label().sequence(), r.label().replicate(), 3600 * Sheet.hour(r)))
                .toList());
    List<Reading> sorted =
        readings.stream()
            .sorted((a, b) -> Integer.compare(a.label().sequence(), b.label().sequence()))
            .toList();
    Alignment alignment = StationOrder.align(visit, plan, OrderSettings.DEFAULT);
    if (alignment.refusal().isPresent()) {
      refuse(
          survey,
          green,
          readings,
          alignment.refusal().get().reason(),
          alignment.refusal().get().remedy());
      return;
    }
    List<Reading> inferred = new ArrayList<>();
    for (Alignment.Placed p : alignment.placed()) {
      Reading r = at(sorted.get(p.index()), p.stationId(), p.x(), p.y(), p.sdM());
      placed.add(r);
      if (p.inferred()) {
        inferred.add(r);
      }
    }
    List<Reading> lost = alignment.notPlaced().stream().map(n -> sorted.get(n.index())).toList();
    if (!lost.isEmpty()) {
      refuse(
          survey,
          green,
          lost,
          lost.size() + " readings fit no station of plan " + plan.planId(),
          "say which stations they are (st_id)");
    }
    String told =
        "%d readings placed by their order along plan %s"
            .formatted(alignment.placed().size(), plan.planId());
    if (!alignment.skipped().isEmpty()) {
      told += "; skipped: station " + String.join(", ", alignment.skipped());
    }
    if (!alignment.doubled().isEmpty()) {
      told += "; read more often than planned: station " + String.join(", ", alignment.doubled());
    }
    boolean disagrees = !alignment.skipped().isEmpty() || !alignment.doubled().isEmpty();
    findings.add(
        new Finding(
            Rule.PLACED,
            disagrees ? Severity.WARN : Severity.NOTE,
            survey,
            green,
            List.of(),
            told
                + (inferred.isEmpty()
                    ? ""
                    : "; %d are inferred with less than 9 in 10".formatted(inferred.size())),
            "note the station with every reading"));
  }

  private void track(String survey, List<Reading> readings) {
    List<Reading> timed =
        readings.stream()
            .filter(r -> !Double.isNaN(Sheet.hour(r)))
            .sorted(Placing::byTime)
            .toList();
    List<Reading> untimed = readings.stream().filter(r -> Double.isNaN(Sheet.hour(r))).toList();
    if (!untimed.isEmpty()) {
      refuse(
          survey,
          "",
          untimed,
          untimed.size() + " readings have neither position nor time",
          "record t_local, or the station");
    }
    double[] seconds = timed.stream().mapToDouble(r -> 3600 * Sheet.hour(r)).toArray();
    ClockOutcome clock = ClockOffset.search(tracks, seconds, ClockSettings.DEFAULT);
    if (clock instanceof ClockOutcome.NotFound none) {
      refuse(survey, "", timed, none.why().reason(), none.why().remedy());
      return;
    }
    ClockOutcome.Found found = (ClockOutcome.Found) clock;
    findings.add(
        new Finding(
            Rule.PLACED,
            found.hours() == 0 ? Severity.NOTE : Severity.WARN,
            survey,
            "",
            List.of(),
            String.format(
                Locale.ROOT,
                "%d readings placed in the track by their times; the logger's clock is %.0f s ahead of"
                    + " the receiver's (standard error %.0f s)%s; the receiver's own error is not"
                    + " recorded and taken as %.1f m",
                timed.size(),
                found.offsetS(),
                found.standardErrorS(),
                found.note().isEmpty() ? "" : ": " + found.note(),
                TRACK_SD_M),
            found.hours() == 0 ? "" : "set the logger's clock"));
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] -= found.offsetS();
    }
    int[] replicates = timed.stream().mapToInt(r -> r.label().replicate()).toArray();
    List<TrackPlace> places =
        TrackPositions.at(tracks, seconds, replicates, TRACK_SD_M, CLOCK_SD_S);
    List<Reading> lost = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      Reading r = timed.get(i);
      if (places.get(i) instanceof TrackPlace.At at) {
        placed.add(at(r, r.label().stationId(), at.x(), at.y(), at.sdM()));
      } else {
        lost.add(r);
      }
    }
    if (!lost.isEmpty()) {
      refuse(
          survey,
          "",
          lost,
          lost.size() + " readings were taken while the track has no point",
          "give the whole track, or the stations");
    }
  }

  private static int byTime(Reading a, Reading b) {
    return Double.compare(Sheet.hour(a), Sheet.hour(b));
  }

  private void refuse(
      String survey, String green, List<Reading> readings, String reason, String remedy) {
    left.addAll(readings);
    findings.add(
        new Finding(Rule.PLACED, Severity.REJECT, survey, green, readings, reason, remedy));
  }

  static Reading at(Reading r, String station, double x, double y, double sdM) {
    return new Reading(
        r.label().withStation(station),
        new Reading.Position(x, y, r.position().z(), r.position().source(), sdM),
        r.moisture(),
        r.protocol(),
        r.role(),
        r.quality());
  }
}
