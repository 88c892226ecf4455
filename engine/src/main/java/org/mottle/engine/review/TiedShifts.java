package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.mottle.engine.position.Mark;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.position.Tie;
import org.mottle.engine.position.VisitShift;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Reading;

/**
 * The shift that the positions of a visit have in common, told by positions recorded at marks of
 * known place ({@link VisitShift}), and readings moved back by it.
 */
public final class TiedShifts {

  /** A shift that was taken off a visit, and what of it is still not known, m per axis. */
  public record Shift(double dx, double dy, double leftSdM) {}

  private record VisitKey(String survey, String green) {}

  private TiedShifts() {}

  /**
   * The shift of each visit that was tied to marks, by {@code survey/green}; findings tell the
   * notable ones and marks that are not known.
   *
   * @param readings what their positions' errors are is taken for the ties' too, where recorded
   */
  public static Map<String, Shift> of(
      List<Tie> ties,
      List<Mark> marks,
      List<Conditions> conditions,
      List<Reading> readings,
      List<Finding> findings) {
    Map<String, Mark> byId = new TreeMap<>();
    marks.forEach(m -> byId.put(m.id(), m));
    Map<VisitKey, List<Tie>> byVisit = new LinkedHashMap<>();
    for (Tie tie : ties) {
      byVisit
          .computeIfAbsent(new VisitKey(tie.surveyId(), tie.greenId()), k -> new ArrayList<>())
          .add(tie);
    }
    Map<String, Shift> shifts = new LinkedHashMap<>();
    byVisit.forEach(
        (visit, own) -> {
          PositionSource source =
              PositionSource.named(own.get(0).source()).orElse(PositionSource.AVERAGED);
          double recorded =
              conditions.stream()
                  .filter(c -> c.isOf(visit.survey(), visit.green()))
                  .mapToDouble(c -> c.visit().shiftSdM())
                  .findFirst()
                  .orElse(Double.NaN);
          double prior = Double.isNaN(recorded) ? source.shiftM() : recorded;
          VisitShift shift = VisitShift.of(own, byId, prior, jitter(visit, readings, source));
          tell(visit, shift, findings);
          if (shift.ties() > 0) {
            shifts.put(
                visit.survey() + "/" + visit.green(),
                new Shift(shift.dx(), shift.dy(), shift.sdM()));
          }
        });
    return shifts;
  }

  private static double jitter(VisitKey visit, List<Reading> readings, PositionSource source) {
    return readings.stream()
        .filter(r -> r.label().surveyId().equals(visit.survey()))
        .filter(r -> r.label().greenId().equals(visit.green()))
        .mapToDouble(r -> r.position().sdM())
        .filter(sd -> sd > 0)
        .average()
        .orElse(source.jitterM());
  }

  private static void tell(VisitKey visit, VisitShift shift, List<Finding> findings) {
    if (!shift.unknownMarks().isEmpty()) {
      findings.add(
          new Finding(
              Rule.SHIFT,
              Severity.WARN,
              visit.survey(),
              visit.green(),
              List.of(),
              "readings at marks that are not known: " + String.join(", ", shift.unknownMarks()),
              "add them to the marks, or correct their names"));
    }
    if (shift.notable()) {
      findings.add(
          new Finding(
              Rule.SHIFT,
              Severity.WARN,
              visit.survey(),
              visit.green(),
              List.of(),
              String.format(
                  Locale.ROOT,
                  "all positions of the visit lie %.1f m off (%.1f m east, %.1f m north; standard"
                      + " error %.1f m), by %d readings at marks: moved back",
                  shift.lengthM(),
                  shift.dx(),
                  shift.dy(),
                  shift.sdM(),
                  shift.ties()),
              "tie every visit to a mark at its start and end"));
    }
  }

  /** The readings moved back by the shift of their visit. */
  public static List<Reading> moved(List<Reading> readings, Map<String, Shift> shifts) {
    return readings.stream()
        .map(
            r -> {
              Shift shift = shifts.get(r.label().surveyId() + "/" + r.label().greenId());
              return shift == null || r.role() == Reading.Role.CONTROL
                  ? r
                  : Placing.at(
                      r,
                      r.label().stationId(),
                      r.x() - shift.dx(),
                      r.y() - shift.dy(),
                      r.position().sdM());
            })
        .toList();
  }
}
