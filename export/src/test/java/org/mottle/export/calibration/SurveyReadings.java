package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.LoggedReading;
import org.mottle.demo.walk.Season;
import org.mottle.demo.walk.TrueReading;
import org.mottle.engine.survey.Reading;

/**
 * The readings of one survey of a demo course by the green they are labelled with. Positions are as
 * logged; in S2, where none were, they come from the track by time, or from the plan by order. Like
 * the reader of files, a reading is kept within two standard errors of its position from the
 * outline of its green, and a green all of whose values are below 1 (read in fractions) has none.
 */
final class SurveyReadings {
  private static final double PLANNED_SD_M = 0.1;
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private final Season season;
  private final Survey survey;
  private final boolean clean;
  private final CleanReadings review;
  private final Map<String, List<TrueReading>> byLabel;

  SurveyReadings(Season season, Survey survey, boolean clean) {
    this.season = season;
    this.survey = survey;
    this.clean = clean;
    this.review = clean ? new CleanReadings(season.log(survey)) : null;
    this.byLabel =
        season.log(survey).readings().stream()
            .collect(Collectors.groupingBy(r -> r.logged().label().greenId()));
  }

  List<Reading> of(String greenId) {
    Geometry outline = DemoCourses.outline(CoursePlace.green(greenId));
    List<Reading> readings = new ArrayList<>();
    int place = -1;
    for (TrueReading r : byLabel.getOrDefault(greenId, List.of())) {
      place += r.logged().label().replicate() == 1 ? 1 : 0;
      if (clean && review.isRejected(r)) {
        continue;
      }
      double pct = clean ? review.adjusted(r) : Double.parseDouble(r.logged().value());
      Reading reading = reading(r.logged(), position(r, place), pct);
      if (isNear(outline, reading)) {
        readings.add(reading);
      }
    }
    boolean fractions = readings.stream().allMatch(r -> r.pct() < 1);
    return fractions ? List.of() : readings;
  }

  private Reading.Position position(TrueReading r, int place) {
    LoggedReading logged = r.logged();
    Point fix = logged.fix().place();
    double sd = logged.fix().sdM();
    if (fix == null && logged.fix().source().equals("track")) {
      fix = track(r);
      sd = season.log(survey).receivers().get(visit(r)).timed().visit().positioning().jitterSd();
    } else if (fix == null) {
      fix = clean ? r.place() : planned(r.greenId(), place);
      sd = PLANNED_SD_M;
    } else if (clean) {
      fix = review.tied(r);
    }
    return new Reading.Position(fix.x(), fix.y(), Double.NaN, logged.fix().source(), sd);
  }

  private Point track(TrueReading r) {
    double seconds = CleanReadings.hours(survey, r.logged()) * 3600;
    var track = season.log(survey).receivers().get(visit(r)).track();
    var before = track.get(0);
    for (var after : track) {
      if (after.seconds() >= seconds) {
        double span = after.seconds() - before.seconds();
        double share = span > 0 ? Math.max(0, (seconds - before.seconds()) / span) : 0;
        return before
            .place()
            .plus(
                share * (after.place().x() - before.place().x()),
                share * (after.place().y() - before.place().y()));
      }
      before = after;
    }
    return before.place();
  }

  /** Which visit a reading belongs to: a green is walked once by an operator. */
  private int visit(TrueReading r) {
    var visits = season.log(survey).visits();
    for (int i = 0; i < visits.size(); i++) {
      var visit = visits.get(i).visit();
      if (visit.green().id().equals(r.greenId())
          && visit.crew().operator().equals(r.logged().crew().operator())) {
        return i;
      }
    }
    throw new IllegalStateException("no visit for " + r.logged().csv());
  }

  /** The k-th place read is taken for the k-th of the plan, as the order alone suggests. */
  private Point planned(String greenId, int place) {
    var visit =
        season.log(survey).visits().stream()
            .map(timed -> timed.visit())
            .filter(v -> v.green().id().equals(greenId))
            .findFirst()
            .orElseThrow();
    List<Point> places = new ArrayList<>();
    for (String planId : visit.planId().split("\\+")) {
      (planId.equals("infill") ? season.extras() : season.plans())
          .stream()
              .filter(p -> p.greenId().equals(greenId) && p.id().equals(planId))
              .forEach(p -> p.stations().forEach(s -> places.add(s.place())));
    }
    GreenSite site = CoursePlace.green(greenId);
    return site.world(places.get(Math.min(place, places.size() - 1)));
  }

  private static boolean isNear(Geometry outline, Reading reading) {
    var place = FACTORY.createPoint(new Coordinate(reading.x(), reading.y()));
    return outline.distance(place) <= 2 * reading.position().sdM();
  }

  private static Reading reading(LoggedReading r, Reading.Position position, double pct) {
    return new Reading(
        new Reading.Label(
            r.label().greenId(),
            r.label().survey().name(),
            r.station().id(),
            r.label().sequence(),
            r.label().replicate(),
            0),
        position,
        Reading.Moisture.raw(pct),
        new Reading.Protocol(
            r.time(),
            r.crew().rodMm(),
            r.crew().probe(),
            r.crew().operator(),
            "",
            r.soil().temperatureC(),
            r.soil().conductivityDsM()),
        Reading.Role.valueOf(r.station().role().name()),
        Reading.Quality.NOT_REVIEWED);
  }
}
