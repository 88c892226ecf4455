package org.mottle.demo.walk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.CatchCans;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Station.Role;

class SeasonTest {

  private static Season season;

  @BeforeAll
  static void walk() {
    season = new Season(20250514);
  }

  @Test
  void everyPlanHas16StationsAnd2ClosePairsInsideTheGreen() {
    assertThat(season.plans()).hasSize(11);
    for (StationPlan plan : season.plans()) {
      GreenSite green = CoursePlace.green(plan.greenId());
      assertThat(plan.stations()).as(plan.id() + " " + plan.greenId()).hasSize(18);
      List<Station> pairs = plan.stations().stream().filter(s -> s.role() == Role.PAIR).toList();
      assertThat(pairs).hasSize(2);
      for (Station pair : pairs) {
        assertThat(plan.stations().stream().mapToDouble(s -> metres(s, pair)).filter(d -> d > 0))
            .as(plan.id() + " " + plan.greenId() + " pair")
            .anyMatch(d -> Math.abs(d - 0.5) < 1e-9);
      }
      Set<Point> places = new HashSet<>();
      for (Station station : plan.stations()) {
        Point p = station.place();
        assertThat(places.add(p)).as("a place twice in " + plan.greenId()).isTrue();
        assertThat(green.ring().depth(p.x(), p.y())).as(plan.greenId()).isGreaterThan(0.75);
      }
    }
  }

  @Test
  void coverageLeavesNoWideGap() {
    for (StationPlan plan : season.plans()) {
      if (plan.id().equals("base")) {
        double widest = 0;
        for (Point cell : CoursePlace.green(plan.greenId()).cells(0.5)) {
          double nearest =
              plan.stations().stream()
                  .mapToDouble(s -> s.place().distance(cell))
                  .min()
                  .getAsDouble();
          widest = Math.max(widest, nearest);
        }
        assertThat(widest).as(plan.greenId()).isLessThan(6);
      }
    }
  }

  @Test
  void stationsInfillAndPointsOfInterestAreAsPlanned() {
    assertThat(roles(Survey.S1, "G3", Role.INFILL)).isEqualTo(6);
    assertThat(roles(Survey.S5, "G6", Role.INFILL)).isEqualTo(6);
    assertThat(roles(Survey.S4, "G5", Role.INFILL)).isEqualTo(6);
    assertThat(roles(Survey.S1, "G5", Role.INFILL)).isZero();
    assertThat(roles(Survey.S3, "G8", Role.POINT_OF_INTEREST)).isEqualTo(6);
    assertThat(roles(Survey.S1, "G8", Role.POINT_OF_INTEREST)).isZero();
    for (GreenSite green : CoursePlace.greens()) {
      long twice =
          season.log(Survey.S1).readings().stream()
              .filter(r -> r.greenId().equals(green.id()))
              .filter(r -> r.logged().label().replicate() == 2)
              .count();
      assertThat(twice).as(green.id()).isEqualTo(3);
    }
  }

  @Test
  void theOrderOfTheGreensRotatesAndTheClockIsPlausible() {
    Set<String> first = new HashSet<>();
    for (SurveyLog log : season.logs()) {
      first.add(log.visits().get(0).visit().green().id());
      double last = 0;
      String operator = "A";
      for (Walk.Timed timed : log.visits()) {
        if (!timed.visit().crew().operator().equals(operator)) {
          operator = timed.visit().crew().operator();
          last = 0;
        }
        assertThat(timed.startSecond()).isGreaterThanOrEqualTo(last);
        assertThat(timed.endSecond()).isLessThanOrEqualTo(log.survey().seconds());
        last = timed.endSecond();
        speedsOf(timed.moments());
      }
    }
    assertThat(first).hasSize(Survey.values().length);
  }

  @Test
  void controlsAreReadFiveTimesAtStartHourlyAndAtTheEnd() {
    for (SurveyLog log : season.logs()) {
      for (String station : List.of("C1", "C2")) {
        List<Double> rounds = new ArrayList<>();
        for (TrueReading r : log.controls()) {
          if (r.logged().station().id().equals(station) && r.logged().label().replicate() == 1) {
            rounds.add(hour(log.survey(), r));
          }
        }
        String name = log.survey() + " " + station;
        assertThat(rounds).as(name).hasSizeGreaterThanOrEqualTo(4);
        assertThat(rounds.get(0)).as(name).isLessThan(0.4);
        assertThat(rounds.get(rounds.size() - 1))
            .as(name)
            .isGreaterThan(log.survey().seconds() / 3600.0 - 0.5);
        for (int i = 1; i < rounds.size(); i++) {
          assertThat(rounds.get(i) - rounds.get(i - 1)).as(name).isBetween(0.4, 1.2);
        }
      }
    }
  }

  @Test
  void positionsAreGivenOnlyWhereTheyWereLogged() {
    for (SurveyLog log : season.logs()) {
      for (TrueReading r : log.readings()) {
        boolean given = r.logged().fix().place() != null;
        assertThat(given).as(log.survey() + " " + r.greenId()).isEqualTo(log.survey() != Survey.S2);
      }
    }
    for (Receiver receiver : season.log(Survey.S2).receivers()) {
      boolean tracked = receiver.timed().visit().green().id().compareTo("G3") > 0;
      assertThat(receiver.track().isEmpty()).isEqualTo(!tracked);
    }
  }

  @Test
  void whereOnlyTheOrderIsKnownThePlansHoldEveryPlace() {
    for (Walk.Timed timed : season.log(Survey.S2).visits()) {
      Visit visit = timed.visit();
      if (visit.positioning() == Visit.Positioning.ORDER) {
        List<StationPlan> handedOut = new ArrayList<>(season.plans());
        handedOut.addAll(season.extras());
        Set<Point> known = new HashSet<>();
        for (StationPlan plan : handedOut) {
          boolean followed = List.of(visit.planId().split("\\+")).contains(plan.id());
          if (followed && plan.greenId().equals(visit.green().id())) {
            plan.stations().forEach(s -> known.add(s.place()));
          }
        }
        for (Insertion insertion : timed.insertions()) {
          assertThat(known).as(visit.green().id()).contains(insertion.station().place());
        }
      }
    }
  }

  @Test
  void theFirstSurveyLiesOnItsGreens() {
    for (TrueReading r : season.log(Survey.S1).readings()) {
      GreenSite green = CoursePlace.green(r.greenId());
      Point p = r.logged().fix().place();
      Point centre = green.world(0, 0);
      double depth = green.ring().depth(p.x() - centre.x(), p.y() - centre.y());
      assertThat(depth).as(r.greenId() + " " + r.logged().station().id()).isGreaterThan(-5);
      assertThat(r.logged().label().greenId()).isEqualTo(r.greenId());
      double value = Double.parseDouble(r.logged().value());
      assertThat(value).isBetween(0.5, 50.0);
    }
  }

  private static void speedsOf(List<Walk.Moment> moments) {
    for (int i = 1; i < moments.size(); i++) {
      double seconds = moments.get(i).seconds() - moments.get(i - 1).seconds();
      double metres = moments.get(i).world().distance(moments.get(i - 1).world());
      assertThat(metres).isLessThanOrEqualTo(1.2 * seconds + 1e-6);
    }
  }

  private static double hour(Survey survey, TrueReading reading) {
    double second = OffsetDateTime.parse(reading.logged().time()).toLocalTime().toSecondOfDay();
    double ahead = survey == Survey.S3 ? 3600 : 0; // the planted clock
    return (second - ahead - survey.startSecond()) / 3600;
  }

  private static long roles(Survey survey, String greenId, Role role) {
    return season.log(survey).readings().stream()
        .filter(r -> r.greenId().equals(greenId) && r.logged().station().role() == role)
        .count();
  }

  private static double metres(Station a, Station b) {
    return a.place().distance(b.place());
  }

  @Test
  void catchCansShowTheDeadHead() {
    double g1 = 0;
    double g5 = 0;
    double mean = 0;
    int seeds = 8;
    for (int seed = 1; seed <= seeds; seed++) {
      var cans = new Season(seed).cans();
      g1 += CatchCans.lowerQuarterUniformity(cans.get("G1")) / seeds;
      g5 += CatchCans.lowerQuarterUniformity(cans.get("G5")) / seeds;
      mean +=
          cans.get("G1").stream().mapToDouble(c -> c.mmPerHour()).average().getAsDouble() / seeds;
    }
    assertThat(g1).isBetween(0.75, 0.82);
    assertThat(g5).isBetween(0.50, 0.62);
    assertThat(mean).isCloseTo(12, within(1.0));
  }
}
