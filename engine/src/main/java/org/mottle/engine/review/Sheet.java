package org.mottle.engine.review;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.SharedError;

/** The working sheet of one visit while it is reviewed: belongs to one review. */
final class Sheet {
  final GreenVisit visit;
  final double[] pct;
  final double[] hour;
  final List<Finding> findings = new ArrayList<>();
  final List<SharedError> errors = new ArrayList<>();
  private final String[] note;
  private final Rule[] rule;
  private final Severity[] severity;
  private Optional<Refusal> obstacle = Optional.empty();
  private Rule obstacleRule;

  Sheet(GreenVisit visit) {
    this.visit = visit;
    int n = visit.readings().size();
    this.pct = visit.readings().stream().mapToDouble(Reading::pct).toArray();
    this.hour = visit.readings().stream().mapToDouble(Sheet::hour).toArray();
    this.note = visit.readings().stream().map(r -> r.moisture().note()).toArray(String[]::new);
    this.rule = new Rule[n];
    this.severity = new Severity[n];
  }

  int size() {
    return pct.length;
  }

  Reading reading(int i) {
    return visit.readings().get(i);
  }

  /** Hours since 1970-01-01T00:00Z; NaN where no time was recorded or it cannot be read. */
  static double hour(Reading reading) {
    return hour(reading.protocol().time());
  }

  static double hour(String time) {
    if (time.isEmpty()) {
      return Double.NaN;
    }
    try {
      return OffsetDateTime.parse(time).toEpochSecond() / 3600.0;
    } catch (DateTimeParseException e) {
      return Double.NaN;
    }
  }

  /** Whether the reading takes part: the file says so, and nothing has rejected it. */
  boolean counts(int i) {
    return reading(i).quality().used() && severity[i] != Severity.REJECT;
  }

  boolean counts(int i, Reading.Role not) {
    return counts(i) && reading(i).role() != not;
  }

  /** The rows that take part, in their order. */
  int[] counting() {
    return IntStream.range(0, size()).filter(this::counts).toArray();
  }

  /** The rows that take part in the order they were read: by time, else by sequence. */
  int[] inTime() {
    return Arrays.stream(counting())
        .boxed()
        .sorted(
            (a, b) -> {
              int bySequence =
                  Integer.compare(reading(a).label().sequence(), reading(b).label().sequence());
              boolean timed = !Double.isNaN(hour[a]) && !Double.isNaN(hour[b]);
              int byTime = timed ? Double.compare(hour[a], hour[b]) : 0;
              return byTime != 0 ? byTime : bySequence;
            })
        .mapToInt(Integer::intValue)
        .toArray();
  }

  /** A finding about these rows; the severest of several findings stays with a reading. */
  void find(Rule found, Severity how, int[] rows, String reason, String remedy) {
    for (int i : rows) {
      if (severity[i] == null || how.compareTo(severity[i]) > 0) {
        severity[i] = how;
        rule[i] = found;
      }
    }
    findings.add(
        new Finding(
            found,
            how,
            visit.surveyId(),
            visit.green().id(),
            Arrays.stream(rows).mapToObj(this::reading).toList(),
            reason,
            remedy));
  }

  /** A finding about the visit as a whole; one that rejects keeps it from being mapped. */
  void find(Rule found, Severity how, String reason, String remedy) {
    find(found, how, new int[0], reason, remedy);
    if (how == Severity.REJECT && obstacle.isEmpty()) {
      obstacle = Optional.of(new Refusal(reason, remedy));
      obstacleRule = found;
    }
  }

  boolean mappable() {
    return obstacle.isEmpty();
  }

  Optional<Refusal> obstacle() {
    return obstacle;
  }

  /** Takes so much off a value and says why. */
  void takeOff(int i, double amount, String why) {
    if (amount != 0) {
      pct[i] -= amount;
      String step = String.format(Locale.ROOT, "%s %+.2f", why, -amount);
      note[i] = note[i].isEmpty() ? step : note[i] + "; " + step;
    }
  }

  /** Share of the readings that were rejected; copies of others do not count. */
  double rejectedShare() {
    int rejected = 0;
    int all = 0;
    for (int i = 0; i < size(); i++) {
      boolean copy = rule[i] == Rule.COPY;
      all += copy ? 0 : 1;
      rejected += !copy && severity[i] == Severity.REJECT ? 1 : 0;
    }
    return all == 0 ? 0 : rejected / (double) all;
  }

  /** "station 7", or "reading 3" where no station is named. */
  String name(int i) {
    Reading.Label label = reading(i).label();
    return label.stationId().isEmpty()
        ? "reading " + (label.sequence() > 0 ? label.sequence() : i + 1)
        : "station " + label.stationId();
  }

  /** "stations 3, 4". */
  String names(int[] rows) {
    List<String> ids =
        Arrays.stream(rows)
            .mapToObj(i -> reading(i).label().stationId())
            .filter(id -> !id.isEmpty())
            .distinct()
            .toList();
    if (ids.isEmpty()) {
      return rows.length + " readings";
    }
    return (ids.size() == 1 ? "station " : "stations ") + String.join(", ", ids);
  }

  /** The visit with its readings as found; of one that must not be mapped none is used. */
  GreenVisit reviewed() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < size(); i++) {
      Reading r = reading(i);
      boolean withVisit = obstacle.isPresent() && severity[i] != Severity.REJECT;
      Severity how = withVisit ? Severity.REJECT : severity[i];
      Rule why = withVisit ? obstacleRule : rule[i];
      readings.add(
          new Reading(
              r.label(),
              r.position(),
              new Reading.Moisture(r.moisture().rawPct(), pct[i], note[i]),
              r.protocol(),
              r.role(),
              new Reading.Quality(
                  why == null ? "" : why.code(),
                  how == null || how == Severity.NOTE ? "ok" : how.label(),
                  r.quality().used() && how != Severity.REJECT)));
    }
    return visit.withReadings(readings);
  }
}
