package org.mottle.demo.walk;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.truth.Survey;

/**
 * The mistakes planted in the surveys, one method each. D8 (irrigation just before), D9 (short
 * rods) and D10 (operator B) are part of the truth and of the crews; D14 (a self-crossing import)
 * and D15 (a file copied) of the files.
 */
public final class Defects {

  /** Shift of all positions of S5 on G2, m east. */
  public static final double COMMON_SHIFT_M = 4.2;

  private static final double PARTIAL = 0.8;

  /**
   * @param code D1 to D15
   * @param survey survey, or empty
   * @param green green as it truly is
   * @param stations station numbers, or empty for the whole visit
   * @param what in words
   */
  public record Defect(String code, String survey, String green, String stations, String what) {}

  private Defects() {}

  /** All of them, for tests and for the truth folder. */
  public static List<Defect> all() {
    return List.of(
        new Defect("D1", "S2", "G4", "7", "rods inserted to 0.8 of their length"),
        new Defect("D1", "S3", "G1", "3 4", "rods inserted to 0.8 of their length"),
        new Defect("D1", "S4", "G6", "11", "rods inserted to 0.8 of their length"),
        new Defect("D2", "S2", "G2", "9 10 11 12", "value stuck"),
        new Defect("D3", "S1", "G9", "1", "read in air: 0.6"),
        new Defect("D3", "S5", "G7", "5", "impossible: 61.2"),
        new Defect("D4", "S3", "", "", "logger clock 3600 s ahead"),
        new Defect("D5", "S2", "G1", "8 13", "order only; 8 skipped, 13 read twice"),
        new Defect("D6", "S3", "G4", "5", "position 35 m off"),
        new Defect("D6", "S5", "G2", "", "all positions 4.2 m too far east"),
        new Defect("D7", "S4", "G4", "14 15 16 17 18", "five readings labelled G2"),
        new Defect("D8", "S3", "G9", "", "irrigated 40 minutes before: 3 % wetter"),
        new Defect("D9", "S4", "G9", "", "38 mm rods: 2.5 % lower"),
        new Defect(
            "D10", "S4", "G4 G5 G6", "", "operator B reads 2.0 % higher; 12 stations shared"),
        new Defect("D11", "S5", "G1", "", "fractions instead of per cent"),
        new Defect("D12", "S4", "G7", "", "5 readings only"),
        new Defect("D13", "S2", "G8", "", "12 readings, all in the front third"),
        new Defect("D14", "", "G6", "", "imported outline crosses itself and has no CRS"),
        new Defect("D15", "S1", "G3", "", "the readings a second time in a file of their own"));
  }

  /** D1: share of the rods in the ground. */
  static double insertedShare(Survey survey, String greenId, String stationId) {
    boolean partial =
        switch (survey.name() + "/" + greenId + "/" + stationId) {
          case "S2/G4/7", "S3/G1/3", "S3/G1/4", "S4/G6/11" -> true;
          default -> false;
        };
    return partial ? PARTIAL : 1;
  }

  /** D5, D12: the stations that were read at all, in order. */
  static List<Station> visited(Survey survey, StationPlan plan) {
    List<Station> visited = new ArrayList<>(plan.stations());
    if (survey == Survey.S2 && plan.greenId().equals("G1")) {
      visited.add(visited.indexOf(plan.station("13")), plan.station("13"));
      visited.remove(plan.station("8"));
    }
    return survey == Survey.S4 && plan.greenId().equals("G7") ? visited.subList(0, 5) : visited;
  }

  /** The stations read twice on purpose: none where a defect has cut the visit short. */
  static List<String> replicated(Survey survey, StationPlan plan, List<String> usual) {
    if (survey == Survey.S4 && plan.greenId().equals("G7")) {
      return List.of();
    }
    boolean orderOnly = survey == Survey.S2 && plan.greenId().equals("G1");
    return orderOnly ? List.of(usual.get(0), usual.get(1), "11") : usual;
  }

  /** D2, D3, D4, D6, D7, D11: the log of one green as the file holds it. */
  static List<LoggedReading> spoil(Survey survey, String greenId, List<LoggedReading> log) {
    return switch (survey.name() + "/" + greenId) {
      case "S2/G2" -> stuck(log, List.of("9", "10", "11", "12"));
      case "S1/G9" -> replace(log, "1", "0.6");
      case "S5/G7" -> replace(log, "5", "61.2");
      case "S3/G4" -> ahead(astray(log, "5"));
      case "S4/G4" -> relabelled(log, List.of("14", "15", "16", "17", "18"));
      case "S5/G1" -> log.stream().map(Defects::asFraction).toList();
      default -> survey == Survey.S3 ? ahead(log) : log;
    };
  }

  private static List<LoggedReading> stuck(List<LoggedReading> log, List<String> stations) {
    List<LoggedReading> spoilt = new ArrayList<>();
    String held = "";
    for (LoggedReading reading : log) {
      if (!stations.contains(reading.station().id())) {
        spoilt.add(reading);
        continue;
      }
      held = held.isEmpty() ? reading.value() : held;
      spoilt.add(reading.withValue(held));
    }
    return spoilt;
  }

  private static List<LoggedReading> replace(List<LoggedReading> log, String id, String value) {
    return log.stream()
        .map(r -> is(r, id) && r.label().replicate() == 1 ? r.withValue(value) : r)
        .toList();
  }

  /** 35 m at 36.87 degrees from east: 28 m east and 21 m north. */
  private static List<LoggedReading> astray(List<LoggedReading> log, String id) {
    return log.stream().map(r -> is(r, id) ? r.withFix(r.fix().moved(28, 21)) : r).toList();
  }

  private static List<LoggedReading> ahead(List<LoggedReading> log) {
    return log.stream()
        .map(r -> r.withTime(OffsetDateTime.parse(r.time()).plusSeconds(3600)))
        .toList();
  }

  private static List<LoggedReading> relabelled(List<LoggedReading> log, List<String> stations) {
    return log.stream()
        .map(r -> stations.contains(r.station().id()) ? r.withGreen("G2") : r)
        .toList();
  }

  private static LoggedReading asFraction(LoggedReading reading) {
    return reading.withValue(Decimals.fixed(Double.parseDouble(reading.value()) / 100, 3));
  }

  private static boolean is(LoggedReading reading, String stationId) {
    return reading.station().id().equals(stationId);
  }
}
