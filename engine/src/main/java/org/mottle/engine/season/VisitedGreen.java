package org.mottle.engine.season;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.engine.variogram.NestedModel;

/**
 * One green in one survey, with what the season needs of it.
 *
 * @param map of it, kriged
 * @param readings behind the map
 * @param conditions as recorded; empty when not
 * @param surveyStart when the survey began on its first green; empty when not recorded
 * @param models of it, equally likely
 */
record VisitedGreen(
    Outcome.Mapped map,
    GreenReadings readings,
    Optional<Conditions> conditions,
    Optional<OffsetDateTime> surveyStart,
    List<NestedModel> models) {

  VisitedGreen {
    models = List.copyOf(models);
  }

  String greenId() {
    return map.subject().green().id();
  }

  String surveyId() {
    return map.subject().surveyId();
  }

  SeenSurvey seen() {
    return new SeenSurvey(readings.observations(), readings.insertions());
  }

  /** Names of these stations of the visit; empty text where there is none. */
  List<String> names(SeenSurvey stations) {
    Observations o = stations.observations();
    return IntStream.range(0, o.size()).mapToObj(i -> name(o.x(i), o.y(i))).toList();
  }

  private String name(double x, double y) {
    return map.stations().stations().stream()
        .filter(s -> s.x() == x && s.y() == y)
        .map(Stations.Station::name)
        .findFirst()
        .orElse("");
  }

  /** The visits together, stations that were gone back to at one place each. */
  static List<SeenSurvey> together(
      List<VisitedGreen> visits, Function<VisitedGreen, SeenSurvey> seen) {
    List<SeenSurvey> surveys = visits.stream().map(seen).toList();
    return ReturnedStations.of(
        surveys,
        IntStream.range(0, visits.size())
            .mapToObj(k -> visits.get(k).names(surveys.get(k)))
            .toList());
  }

  /** Stations as the variogram was found: without those far off. */
  SeenSurvey screened() {
    var sample = readings.sample().screened();
    return new SeenSurvey(sample.observations(), sample.insertions());
  }

  MapVariogram variogram() {
    return map.basis().variogram().orElseThrow();
  }

  WaterHistory history() {
    return conditions.map(c -> WaterHistory.of(c.water())).orElse(WaterHistory.UNKNOWN);
  }

  Stream<Reading> used() {
    return map.stations().stations().stream().flatMap(s -> s.insertions().stream());
  }

  SortedSet<Double> rodsMm() {
    SortedSet<Double> rods = new TreeSet<>();
    used().map(r -> r.protocol().rodMm()).filter(mm -> !Double.isNaN(mm)).forEach(rods::add);
    return rods;
  }

  SortedSet<String> calibrations() {
    SortedSet<String> names = new TreeSet<>();
    used().map(r -> r.protocol().calibration()).filter(c -> !c.isEmpty()).forEach(names::add);
    return names;
  }

  /** Who read with what; empty text left out. */
  SortedSet<String> crews() {
    SortedSet<String> names = new TreeSet<>();
    used().map(VisitedGreen::crew).filter(c -> !c.isEmpty()).forEach(names::add);
    return names;
  }

  /** Operator and probe, as the review names them. */
  private static String crew(Reading reading) {
    String operator = reading.protocol().operator();
    String probe = reading.protocol().probe();
    return operator.isEmpty() ? probe : probe.isEmpty() ? operator : operator + " with " + probe;
  }

  /** Whether what this crew reads higher than others was found by the review. */
  boolean knowsOffset(String crew) {
    return map.subject().errors().shared().stream()
        .anyMatch(e -> e.what().equals("operator " + crew));
  }

  /**
   * The time the values are of: the start of the survey where they were taken back to it, else the
   * middle of the visit.
   */
  Optional<OffsetDateTime> time() {
    boolean takenBack = used().anyMatch(r -> r.moisture().note().contains("drying"));
    if (takenBack && surveyStart.isPresent()) {
      return surveyStart;
    }
    Optional<OffsetDateTime> start = conditions.flatMap(c -> parsed(c.visit().start()));
    Optional<OffsetDateTime> end = conditions.flatMap(c -> parsed(c.visit().end()));
    return start.map(s -> end.map(e -> s.plus(Duration.between(s, e).dividedBy(2))).orElse(s));
  }

  static Optional<OffsetDateTime> parsed(String time) {
    try {
      return time.isEmpty() ? Optional.empty() : Optional.of(OffsetDateTime.parse(time));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
