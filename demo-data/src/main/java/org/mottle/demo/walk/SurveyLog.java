package org.mottle.demo.walk;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;

/**
 * All that was logged on one day, with the truth beside it. Each green, day and component has its
 * own stream of random numbers. Immutable once made.
 */
public final class SurveyLog {

  private final Survey survey;
  private final List<TrueReading> readings = new ArrayList<>();
  private final List<TrueReading> controls = new ArrayList<>();
  private final List<Walk.Timed> visits = new ArrayList<>();
  private final List<Receiver> receivers = new ArrayList<>();

  private SurveyLog(Survey survey) {
    this.survey = survey;
  }

  /** Walks one day over the true ground. */
  public static SurveyLog of(
      long seed, Survey survey, Rounds rounds, Map<String, GreenTruth> truths) {
    SurveyLog log = new SurveyLog(survey);
    for (String operator : survey == Survey.S4 ? List.of("A", "B") : List.of("A")) {
      Walk walk = Walk.of(survey, rounds.visits(survey, operator), operator.equals("A"));
      log.visits.addAll(walk.visits());
      log.controls.addAll(log.readControls(seed, walk, truths));
    }
    Map<String, List<TrueReading>> byGreen = new TreeMap<>();
    for (Walk.Timed timed : log.visits) {
      Receiver receiver = new Receiver(seed, timed);
      log.receivers.add(receiver);
      String green = timed.visit().green().id();
      log.read(seed, timed, receiver, truths.get(green), byGreen);
    }
    byGreen.forEach((green, list) -> log.readings.addAll(spoilt(survey, green, list)));
    return log;
  }

  public Survey survey() {
    return survey;
  }

  /** By green and order; the controls are apart. */
  public List<TrueReading> readings() {
    return List.copyOf(readings);
  }

  /** The readings of the control stations, in order of time. */
  public List<TrueReading> controls() {
    return List.copyOf(controls);
  }

  /** Visits in walking order, operator A before B. */
  public List<Walk.Timed> visits() {
    return List.copyOf(visits);
  }

  /** One for each visit, in the same order. */
  public List<Receiver> receivers() {
    return List.copyOf(receivers);
  }

  /** Local time of so many seconds after the start. */
  public static OffsetDateTime time(Survey survey, double seconds) {
    return LocalDate.parse(survey.date())
        .atTime(LocalTime.parse(survey.start()))
        .plusSeconds(Math.round(seconds))
        .atOffset(ZoneOffset.ofHours(1));
  }

  /** As it stands in files. */
  public static String timeText(Survey survey, double seconds) {
    return LoggedReading.TIME.format(time(survey, seconds));
  }

  private void read(
      long seed,
      Walk.Timed timed,
      Receiver receiver,
      GreenTruth truth,
      Map<String, List<TrueReading>> byGreen) {
    String green = truth.green().id();
    List<TrueReading> list = byGreen.computeIfAbsent(green, g -> new ArrayList<>());
    String crew = timed.visit().crew().operator();
    Stream errors = Stream.of(seed, green, survey.name(), "probe " + crew);
    for (Insertion insertion : timed.insertions()) {
      Point place = truth.green().world(insertion.station().place());
      LoggedReading.Fix fix = receiver.fix(insertion, place);
      LoggedReading.Label label =
          new LoggedReading.Label(green, survey, list.size() + 1, insertion.replicate());
      list.add(take(truth, label, insertion, timed.visit().crew(), fix, errors));
    }
  }

  private List<TrueReading> readControls(long seed, Walk walk, Map<String, GreenTruth> truths) {
    List<TrueReading> list = new ArrayList<>();
    int[] count = new int[2];
    for (Walk.Control control : walk.controls()) {
      String green = control.greenId();
      Stream errors =
          Stream.of(seed, green, survey.name(), "control", Integer.toString(list.size()));
      Point place = truths.get(green).green().world(control.insertion().station().place());
      int sequence = ++count[green.equals("G1") ? 0 : 1];
      LoggedReading.Label label =
          new LoggedReading.Label(green, survey, sequence, control.insertion().replicate());
      LoggedReading.Fix fix = new LoggedReading.Fix(place, "plan", 0.1);
      TrueReading reading =
          take(truths.get(green), label, control.insertion(), Visit.Crew.A, fix, errors);
      LoggedReading logged = reading.logged();
      if (survey == Survey.S3) {
        logged = logged.withTime(OffsetDateTime.parse(logged.time()).plusSeconds(3600));
      }
      list.add(new TrueReading(green, logged, reading.place(), reading.soil()));
    }
    return list;
  }

  private TrueReading take(
      GreenTruth truth,
      LoggedReading.Label label,
      Insertion insertion,
      Visit.Crew crew,
      LoggedReading.Fix fix,
      Stream errors) {
    Point at = insertion.station().place();
    double start = truth.soilPct(survey, at.x(), at.y());
    double micro = Math.sqrt(Probe.MICRO_VARIANCE) * errors.gaussian();
    double error = Probe.ERROR_SD * errors.gaussian();
    double hours = insertion.seconds() / 3600;
    double soil = truth.within(start - Survey.DRYING_PCT_H * hours + micro);
    double share = Defects.insertedShare(survey, label.greenId(), insertion.station().id());
    double shown = share < 1 ? Probe.partlyInserted(soil, share) : soil;
    double value = Math.max(0, shown + crew.biasPct() + error);
    double warmth = 11 + 0.35 * survey.et0() + 0.6 * hours;
    LoggedReading logged =
        new LoggedReading(
            label,
            insertion.station(),
            timeText(survey, insertion.seconds()),
            Decimals.fixed(value, 1),
            crew,
            fix,
            new LoggedReading.Soil(warmth, 0.1 + 0.012 * soil));
    Point place = truth.green().world(at);
    return new TrueReading(
        label.greenId(), logged, place, new TrueReading.Soil(start, micro, error));
  }

  private static List<TrueReading> spoilt(Survey survey, String green, List<TrueReading> list) {
    List<LoggedReading> log =
        Defects.spoil(survey, green, list.stream().map(TrueReading::logged).toList());
    List<TrueReading> spoilt = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      TrueReading r = list.get(i);
      spoilt.add(new TrueReading(r.greenId(), log.get(i), r.place(), r.soil()));
    }
    return spoilt;
  }
}
