package org.mottle.demo.walk;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Survey;

/**
 * One line of a readings file, as the logger and its operator left it.
 *
 * @param label green, survey, number
 * @param station where the probe truly was
 * @param time ISO 8601 with offset
 * @param value as printed
 * @param crew who, with what
 * @param fix position as logged
 * @param soil the logger's other two numbers
 */
public record LoggedReading(
    Label label, Station station, String time, String value, Visit.Crew crew, Fix fix, Soil soil) {

  /** The heading of every readings file. */
  public static final String HEADING =
      "green_id,surv_id,st_id,seq,rep,t_local,vwc_raw,rod_mm,probe,oper,calib,soil_c,ec_dsm,x,y,"
          + "pos_src,pos_sd_m,role";

  static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssXXX", Locale.ROOT);

  /**
   * @param greenId as labelled
   * @param survey the day
   * @param sequence order on the green that day, from 1
   * @param replicate 1 for the first insertion
   */
  public record Label(String greenId, Survey survey, int sequence, int replicate) {}

  /**
   * @param temperatureC degrees Celsius
   * @param conductivityDsM bulk electrical conductivity, dS/m
   */
  public record Soil(double temperatureC, double conductivityDsM) {}

  /**
   * @param place EPSG:32628, or null where the position was not logged
   * @param source sbas, phone, track, order
   * @param sdM standard error of a fix, m; ignored where there is none
   */
  public record Fix(Point place, String source, double sdM) {
    Fix moved(double dx, double dy) {
      return new Fix(place.plus(dx, dy), source, sdM);
    }

    String csv() {
      return place == null
          ? ",," + source + ","
          : String.join(
              ",",
              Decimals.fixed(place.x(), 3),
              Decimals.fixed(place.y(), 3),
              source,
              Decimals.fixed(sdM, 1));
    }
  }

  /** The line, without line end. Where only the order is logged, no station or pair is named. */
  public String csv() {
    boolean orderOnly = fix.source().equals(Visit.Positioning.ORDER.code());
    return String.join(
        ",",
        label.greenId(),
        label.survey().name(),
        orderOnly ? "" : station.id(),
        Integer.toString(label.sequence()),
        Integer.toString(label.replicate()),
        time,
        value,
        Integer.toString(crew.rodMm()),
        crew.probe(),
        crew.operator(),
        label.greenId().equals("G7") ? "standard" : "sand",
        Decimals.fixed(soil.temperatureC(), 1),
        Decimals.fixed(soil.conductivityDsM(), 2),
        fix.csv(),
        orderOnly && station.role() == Station.Role.PAIR
            ? Station.Role.PLAN.code()
            : station.role().code());
  }

  LoggedReading withValue(String other) {
    return new LoggedReading(label, station, time, other, crew, fix, soil);
  }

  LoggedReading withFix(Fix other) {
    return new LoggedReading(label, station, time, value, crew, other, soil);
  }

  LoggedReading withTime(OffsetDateTime other) {
    return new LoggedReading(label, station, TIME.format(other), value, crew, fix, soil);
  }

  LoggedReading withGreen(String other) {
    Label renamed = new Label(other, label.survey(), label.sequence(), label.replicate());
    return new LoggedReading(renamed, station, time, value, crew, fix, soil);
  }
}
