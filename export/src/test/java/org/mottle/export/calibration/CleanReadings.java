package org.mottle.export.calibration;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.LoggedReading;
import org.mottle.demo.walk.Receiver;
import org.mottle.demo.walk.SurveyLog;
import org.mottle.demo.walk.TrueReading;

/**
 * What a review of the readings of one survey would leave of them. Left out: partial insertions
 * (D1), the stuck values (D2), air and the impossible value (D3), the reading 35 m off (D6),
 * readings labelled with another green (D7), the green read with short rods (D9), the green walked
 * in its front third (D13). Put right from the files: the logger's clock (D4), the order of
 * stations (D5), the shift of S5 on G2 by its readings at a head (D6), operator B by the shared
 * stations (D10), fractions (D11), drying by the control stations. D8 is true of the ground, D12
 * leaves too few stations to map, D14 and D15 are not read.
 */
final class CleanReadings {
  private static final double LEAST_MATTER_PCT = 0.5;
  private static final Set<String> REJECTED =
      Set.of(
          "S2/G4/7",
          "S3/G1/3",
          "S3/G1/4",
          "S4/G6/11",
          "S2/G2/9",
          "S2/G2/10",
          "S2/G2/11",
          "S2/G2/12",
          "S1/G9/1",
          "S5/G7/5",
          "S3/G4/5");
  private static final Set<String> REJECTED_GREENS = Set.of("S4/G9", "S2/G8");
  private final SurveyLog log;
  private final Survey survey;
  private final double slope;
  private final double operatorB;

  CleanReadings(SurveyLog log) {
    this.log = log;
    this.survey = log.survey();
    this.slope = slope();
    this.operatorB = operatorB();
  }

  /** Hours from the start of the survey, the wrong clock of S3 put right. */
  static double hours(Survey survey, LoggedReading reading) {
    double seconds =
        Duration.between(SurveyLog.time(survey, 0), OffsetDateTime.parse(reading.time()))
            .toSeconds();
    return (survey == Survey.S3 ? seconds - 3600 : seconds) / 3600;
  }

  boolean isRejected(TrueReading r) {
    String green = survey.name() + "/" + r.greenId();
    return REJECTED_GREENS.contains(green)
        || REJECTED.contains(green + "/" + r.logged().station().id())
        || !r.greenId().equals(r.logged().label().greenId());
  }

  /** The value at the start of the survey as operator A would have read it, % by volume. */
  double adjusted(TrueReading r) {
    double b = r.logged().crew().operator().equals("B") ? operatorB : 0;
    return undried(r) - b;
  }

  /** The fix, where ties show a shift of more than 3 m moved back by it. */
  Point tied(TrueReading r) {
    Point fix = r.logged().fix().place();
    if (survey != Survey.S5 || !r.greenId().equals("G2")) {
      return fix;
    }
    Receiver receiver =
        log.receivers().stream()
            .filter(each -> each.timed().visit().green().id().equals("G2"))
            .findFirst()
            .orElseThrow();
    double dx = 0;
    double dy = 0;
    List<Receiver.Tie> ties = receiver.ties();
    for (Receiver.Tie tie : ties) {
      Point head = receiver.timed().visit().green().world(tie.head().place());
      dx += (tie.place().x() - head.x()) / ties.size();
      dy += (tie.place().y() - head.y()) / ties.size();
    }
    return fix.plus(-dx, -dy);
  }

  private double undried(TrueReading r) {
    double value = Double.parseDouble(r.logged().value());
    boolean fraction = survey == Survey.S5 && r.greenId().equals("G1");
    return (fraction ? 100 * value : value) - slope * hours(survey, r.logged());
  }

  /** % an hour from the control stations, each about its own mean; 0 where it does not matter. */
  private double slope() {
    Map<String, SummaryStatistics> hours = new TreeMap<>();
    Map<String, SummaryStatistics> values = new TreeMap<>();
    for (TrueReading r : log.controls()) {
      String id = r.logged().station().id();
      hours.computeIfAbsent(id, k -> new SummaryStatistics()).addValue(hours(survey, r.logged()));
      values
          .computeIfAbsent(id, k -> new SummaryStatistics())
          .addValue(Double.parseDouble(r.logged().value()));
    }
    SimpleRegression line = new SimpleRegression();
    for (TrueReading r : log.controls()) {
      String id = r.logged().station().id();
      line.addData(
          hours(survey, r.logged()) - hours.get(id).getMean(),
          Double.parseDouble(r.logged().value()) - values.get(id).getMean());
    }
    boolean matters =
        Math.abs(line.getSlope()) * survey.seconds() / 3600 > LEAST_MATTER_PCT
            && Math.abs(line.getSlope()) > 2 * line.getSlopeStdErr();
    return matters ? line.getSlope() : 0;
  }

  /** Mean of B minus A at the stations both read; 0 where it does not matter. */
  private double operatorB() {
    Map<String, SummaryStatistics> a = new TreeMap<>();
    Map<String, SummaryStatistics> b = new TreeMap<>();
    for (TrueReading r : log.readings()) {
      Map<String, SummaryStatistics> by = r.logged().crew().operator().equals("B") ? b : a;
      by.computeIfAbsent(
              r.greenId() + "/" + r.logged().station().id(), k -> new SummaryStatistics())
          .addValue(undried(r));
    }
    SummaryStatistics difference = new SummaryStatistics();
    b.forEach(
        (station, values) -> {
          if (a.containsKey(station)) {
            difference.addValue(values.getMean() - a.get(station).getMean());
          }
        });
    if (difference.getN() < 2) {
      return 0;
    }
    double error = difference.getStandardDeviation() / Math.sqrt(difference.getN());
    double mean = difference.getMean();
    return Math.abs(mean) > LEAST_MATTER_PCT && Math.abs(mean) > 2 * error ? mean : 0;
  }
}
