package org.mottle.engine.course;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Reading;

/** When a visit was, by its readings. */
final class VisitTimes {
  private VisitTimes() {}

  /** The last reading that names an instant; empty when none does. */
  static Optional<OffsetDateTime> last(List<Reading> readings) {
    return readings.stream()
        .map(r -> r.protocol().time())
        .flatMap(t -> parsed(t).stream())
        .max(Comparator.comparing(OffsetDateTime::toInstant));
  }

  private static Optional<OffsetDateTime> parsed(String time) {
    try {
      return Optional.of(OffsetDateTime.parse(time));
    } catch (DateTimeParseException e) {
      return Optional.empty(); // a time without an offset names no instant
    }
  }

  /** Hours from the last reading to another time; NaN when either is not known. */
  static double hours(Optional<OffsetDateTime> last, Optional<OffsetDateTime> until) {
    return last.isEmpty() || until.isEmpty()
        ? Double.NaN
        : Duration.between(last.get(), until.get()).toMinutes() / 60.0;
  }
}
