package org.mottle.demo.files;

import static org.mottle.demo.random.Decimals.fixed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.CatchCans;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.LoggedReading;
import org.mottle.demo.walk.Receiver;
import org.mottle.demo.walk.Season;
import org.mottle.demo.walk.Station;
import org.mottle.demo.walk.StationPlan;
import org.mottle.demo.walk.SurveyLog;
import org.mottle.demo.walk.TrueReading;
import org.mottle.demo.walk.Walk;

/** The tables of the course as CSV: comma, point, UTF-8, one line a row. */
final class Tables {

  private Tables() {}

  /** The readings of one survey, without those of the control stations. */
  static String readings(SurveyLog log) {
    return table(LoggedReading.HEADING, log.readings(), r -> r.logged().csv());
  }

  /** Everything logged in all surveys, controls included. */
  static String allReadings(Season season) {
    List<TrueReading> all = new ArrayList<>();
    for (SurveyLog log : season.logs()) {
      all.addAll(log.readings());
      all.addAll(log.controls());
    }
    return table(LoggedReading.HEADING, all, r -> r.logged().csv());
  }

  /** The readings of the control stations in all surveys. */
  static String controls(Season season) {
    List<TrueReading> all = new ArrayList<>();
    season.logs().forEach(log -> all.addAll(log.controls()));
    return table(LoggedReading.HEADING, all, r -> r.logged().csv());
  }

  /** D15: the readings of S1 on G3 a second time. */
  static String copy(SurveyLog log) {
    List<TrueReading> copied =
        log.readings().stream().filter(r -> r.greenId().equals("G3")).toList();
    return table(LoggedReading.HEADING, copied, r -> r.logged().csv());
  }

  /** Conditions, one row for each survey and green. */
  static String surveys(Season season) {
    List<String> rows = new ArrayList<>();
    for (SurveyLog log : season.logs()) {
      Map<String, String> byGreen = new TreeMap<>();
      for (Walk.Timed timed : log.visits()) {
        if (!timed.visit().shared()) {
          byGreen.put(timed.visit().green().id(), conditions(log.survey(), timed));
        }
      }
      rows.addAll(byGreen.values());
    }
    String heading =
        "surv_id,green_id,t_start,t_end,oper,probe,rod_mm,rain_h,rain_mm,irr_h,irr_mm,et0_mm_d,"
            + "dew,pos_src,shift_sd_m,plan_id,note";
    return table(heading, rows, row -> row);
  }

  private static String conditions(Survey survey, Walk.Timed timed) {
    boolean justIrrigated = survey == Survey.S3 && timed.visit().green().id().equals("G9");
    Survey.Water water = survey.water();
    var crew = timed.visit().crew();
    var positioning = timed.visit().positioning();
    String note =
        switch (survey) {
          case S4 -> "hand watered in the night" + sharedNote(timed.visit().green().id());
          case S6 -> "heads repaired";
          default -> "";
        };
    return String.join(
        ",",
        survey.name(),
        timed.visit().green().id(),
        SurveyLog.timeText(survey, timed.startSecond()),
        SurveyLog.timeText(survey, timed.endSecond()),
        crew.operator(),
        crew.probe(),
        Integer.toString(crew.rodMm()),
        water.rainHours(),
        fixed(water.rainMm(), 0),
        justIrrigated ? "0.7" : water.irrigationHours(),
        fixed(water.irrigationMm(), 0),
        fixed(survey.et0(), 1),
        survey == Survey.S1 || survey == Survey.S6 ? "y" : "n",
        positioning.code(),
        positioning.logged() ? fixed(positioning.shiftSd(), 1) : "",
        timed.visit().planId(),
        note);
  }

  private static String sharedNote(String greenId) {
    return switch (greenId) {
      case "G3" -> "; stations 1-6 also read by B";
      case "G4" -> "; stations 1-6 also read by A";
      default -> "";
    };
  }

  /** The plans handed out, in walking order, EPSG:32628. */
  static String plans(Season season) {
    List<String> rows = new ArrayList<>();
    List<StationPlan> plans = new ArrayList<>(season.plans());
    plans.addAll(season.extras());
    for (StationPlan plan : plans) {
      GreenSite green = CoursePlace.green(plan.greenId());
      int order = 0;
      for (Station station : plan.stations()) {
        Point p = green.world(station.place());
        String row =
            String.join(
                ",",
                plan.id(),
                plan.greenId(),
                station.id(),
                Integer.toString(++order),
                station.role().code(),
                fixed(p.x(), 3),
                fixed(p.y(), 3));
        rows.add(row);
      }
    }
    return table("plan_id,green_id,st_id,seq,role,x,y", rows, row -> row);
  }

  /** Fixes at heads before and after each visit. */
  static String ties(Season season) {
    List<String> rows = new ArrayList<>();
    for (SurveyLog log : season.logs()) {
      for (Receiver receiver : log.receivers()) {
        for (Receiver.Tie tie : receiver.ties()) {
          var visit = receiver.timed().visit();
          String row =
              String.join(
                  ",",
                  log.survey().name(),
                  visit.green().id(),
                  visit.crew().operator(),
                  tie.head().id(),
                  SurveyLog.timeText(log.survey(), tie.seconds()),
                  fixed(tie.place().x(), 3),
                  fixed(tie.place().y(), 3),
                  visit.positioning().code());
          rows.add(row);
        }
      }
    }
    return table("surv_id,green_id,oper,head_id,t_local,x,y,pos_src", rows, row -> row);
  }

  /** Catch cans of 10 June, EPSG:32628. */
  static String cans(Season season) {
    List<String> rows = new ArrayList<>();
    for (String greenId : List.of("G1", "G5")) {
      int number = 0;
      for (CatchCans.Can can : season.cans().get(greenId)) {
        Point p = CoursePlace.green(greenId).world(can.place());
        String row =
            String.join(
                ",",
                greenId,
                "K" + greenId.substring(1) + "-" + ++number,
                "2025-06-10",
                fixed(p.x(), 3),
                fixed(p.y(), 3),
                Integer.toString(can.millilitres()),
                fixed(CatchCans.MOUTH_CM2, 0),
                Integer.toString(CatchCans.MINUTES),
                fixed(can.mmPerHour(), 1),
                fixed(CatchCans.WIND_MS, 1));
        rows.add(row);
      }
    }
    String heading = "green_id,can_id,date,x,y,ml,mouth_cm2,min_run,mm_h,wind_ms";
    return table(heading, rows, row -> row);
  }

  static <T> String table(String heading, List<T> rows, Function<T, String> line) {
    StringBuilder text = new StringBuilder(heading).append('\n');
    rows.forEach(row -> text.append(line.apply(row)).append('\n'));
    return text.toString();
  }
}
