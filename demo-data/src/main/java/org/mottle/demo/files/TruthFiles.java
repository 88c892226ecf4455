package org.mottle.demo.files;

import static org.mottle.demo.random.Decimals.fixed;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Fault;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Defects;
import org.mottle.demo.walk.Probe;
import org.mottle.demo.walk.Receiver;
import org.mottle.demo.walk.Season;
import org.mottle.demo.walk.SurveyLog;
import org.mottle.demo.walk.TrueReading;

/**
 * The truth of a season on disk, for judging a tool and never for feeding it: moisture and fault
 * rasters of 0.5 m cells, the soil behind each reading, the shifts, the planted defects, the
 * figures.
 */
final class TruthFiles {

  private TruthFiles() {}

  static void write(Season season, Path folder) throws IOException {
    Files.createDirectories(folder);
    text(folder, "defects.csv", defects());
    text(folder, "readings.csv", readings(season));
    text(folder, "shifts.csv", shifts(season));
    text(folder, "parameters.json", parameters(season));
    for (GreenSite green : CoursePlace.greens()) {
      rasters(season.truth(green.id()), folder);
    }
  }

  private static void rasters(GreenTruth truth, Path folder) throws IOException {
    GreenSite green = truth.green();
    Point centre = green.world(0, 0);
    GridText frame = ElevationFiles.frame(green, 0, 0.5);
    for (Survey survey : Survey.values()) {
      frame.write(
          folder,
          "vwc_" + green.id() + "_" + survey.name(),
          (x, y) -> inside(green, x - centre.x(), y - centre.y(), truth, survey),
          2);
    }
    for (Fault fault : truth.faults()) {
      frame.write(
          folder, "fault_" + green.id(), (x, y) -> fault.shape(x - centre.x(), y - centre.y()), 3);
    }
  }

  private static double inside(
      GreenSite green, double dx, double dy, GreenTruth truth, Survey survey) {
    return green.ring().contains(dx, dy) ? truth.soilPct(survey, dx, dy) : Double.NaN;
  }

  private static String defects() {
    return Tables.table(
        "code,surv_id,green_id,stations,what",
        Defects.all(),
        d ->
            String.join(
                ",", d.code(), d.survey(), d.green(), d.stations(), "\"" + d.what() + "\""));
  }

  private static String readings(Season season) {
    List<TrueReading> all = new ArrayList<>();
    for (SurveyLog log : season.logs()) {
      all.addAll(log.readings());
      all.addAll(log.controls());
    }
    return Tables.table(
        "surv_id,green_id,labelled,st_id,seq,rep,oper,role,x,y,soil_pct,micro_pct,probe_pct,vwc_raw",
        all,
        TruthFiles::row);
  }

  private static String row(TrueReading r) {
    var logged = r.logged();
    return String.join(
        ",",
        logged.label().survey().name(),
        r.greenId(),
        logged.label().greenId(),
        logged.station().id(),
        Integer.toString(logged.label().sequence()),
        Integer.toString(logged.label().replicate()),
        logged.crew().operator(),
        logged.station().role().code(),
        fixed(r.place().x(), 3),
        fixed(r.place().y(), 3),
        fixed(r.soil().startPct(), 2),
        fixed(r.soil().microPct(), 2),
        fixed(r.soil().probePct(), 2),
        logged.value());
  }

  private static String shifts(Season season) {
    List<String> rows = new ArrayList<>();
    for (SurveyLog log : season.logs()) {
      for (Receiver receiver : log.receivers()) {
        var visit = receiver.timed().visit();
        String row =
            String.join(
                ",",
                log.survey().name(),
                visit.green().id(),
                visit.crew().operator(),
                visit.positioning().code(),
                fixed(receiver.shift().x(), 3),
                fixed(receiver.shift().y(), 3),
                fixed(visit.positioning().jitterSd(), 1));
        rows.add(row);
      }
    }
    return Tables.table("surv_id,green_id,oper,pos_src,shift_x,shift_y,jitter_sd", rows, r -> r);
  }

  private static String parameters(Season season) throws IOException {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("seed", season.seed());
    all.put("micro_nugget", number(Probe.MICRO_VARIANCE, 2));
    all.put("probe_sd", number(Probe.ERROR_SD, 2));
    all.put("persistent_share", number(Survey.PERSISTENT_SHARE, 2));
    all.put("drying_pct_h", number(Survey.DRYING_PCT_H, 2));
    all.put("operator_b_minus_a", number(2.0, 1));
    all.put(
        "orthophoto_shift_m",
        List.of(number(Orthophotos.SHIFT_EAST_M, 1), number(Orthophotos.SHIFT_NORTH_M, 1)));
    Map<String, Object> greens = new LinkedHashMap<>();
    for (GreenSite green : CoursePlace.greens()) {
      greens.put(green.id(), green(season.truth(green.id())));
    }
    all.put("greens", greens);
    return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(all) + "\n";
  }

  private static Map<String, Object> green(GreenTruth truth) {
    GreenSite green = truth.green();
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("area_m2", number(green.ring().area(), 2));
    figures.put("offset_pct", number(truth.offsetPct(), 3));
    figures.put("range_m", number(Survey.rangeM(green.build()), 1));
    for (Survey survey : Survey.values()) {
      Map<String, Object> day = new LinkedHashMap<>();
      day.put("mean_pct", number(truth.meanPct(survey), 3));
      day.put("sill", number(survey.sill(green.build()), 2));
      truth.faults().forEach(f -> day.put("fault_pct", f.amplitudes().get(survey.ordinal())));
      figures.put(survey.name(), day);
    }
    return figures;
  }

  private static BigDecimal number(double value, int digits) {
    return new BigDecimal(fixed(value, digits));
  }

  private static void text(Path folder, String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }
}
