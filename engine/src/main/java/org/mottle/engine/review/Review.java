package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.adjust.Drying;
import org.mottle.engine.adjust.OperatorOffset;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;

/**
 * Readings checked, made comparable and graded. Values that cannot be are taken out first, then
 * drying and operators are adjusted for, and only then readings are held against their neighbours
 * and their stations' past. A reading is never left out because it is extreme: a dry patch is what
 * is looked for. What is rejected stays in the file, not used. Deterministic; about 0.2 ms a visit
 * of 24 readings; one thread.
 */
public final class Review {
  private final ReviewSettings settings;
  private final Progress progress;
  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, Drying> drying = new LinkedHashMap<>();
  private final Map<String, List<OperatorOffset>> operators = new LinkedHashMap<>();

  private Review(ReviewSettings settings, Progress progress) {
    this.settings = settings;
    this.progress = progress;
  }

  /** With the limits of {@link ReviewSettings#DEFAULT}. */
  public static Reviewed of(FieldRecord record) {
    return of(record, ReviewSettings.DEFAULT, Progress.NONE);
  }

  public static Reviewed of(FieldRecord record, ReviewSettings settings, Progress progress) {
    return new Review(settings, progress).reviewed(record);
  }

  private Reviewed reviewed(FieldRecord record) {
    findings.addAll(record.before());
    List<Sheet> sheets = record.visits().stream().map(Sheet::new).toList();
    ValueChecks values = new ValueChecks(settings);
    CopyCheck copies = new CopyCheck();
    WaterChecks water = new WaterChecks(settings);
    for (Sheet sheet : sheets) {
      progress.check();
      copies.check(sheet);
      values.check(sheet);
      water.check(sheet);
    }
    RodChecks.check(sheets);
    bySurvey(sheets)
        .forEach((survey, own) -> compare(survey, own, controls(record.controls(), survey)));
    PlaceChecks places = new PlaceChecks(settings);
    for (Sheet sheet : sheets) {
      progress.check();
      places.check(sheet);
    }
    ReplicateCheck.check(sheets, settings);
    new NeighbourCheck(sheets, settings);
    List<Reading> elsewhere = record.elsewhere().stream().map(this::elsewhere).toList();
    return new Reviewed(
        sheets.stream().map(this::graded).toList(),
        record.controls(),
        elsewhere,
        findings,
        drying,
        operators);
  }

  private static Map<String, List<Sheet>> bySurvey(List<Sheet> sheets) {
    Map<String, List<Sheet>> bySurvey = new LinkedHashMap<>();
    for (Sheet sheet : sheets) {
      bySurvey.computeIfAbsent(sheet.visit.surveyId(), k -> new ArrayList<>()).add(sheet);
    }
    return bySurvey;
  }

  private static List<Reading> controls(List<Reading> controls, String survey) {
    return controls.stream().filter(r -> r.label().surveyId().equals(survey)).toList();
  }

  /** Visits that are not mapped for their rods or units have no say in what is compared. */
  private void compare(String survey, List<Sheet> sheets, List<Reading> controls) {
    ClockCheck.check(survey, sheets, findings);
    List<Sheet> sound = sheets.stream().filter(Sheet::mappable).toList();
    Comparison comparison = new Comparison(survey, sound, controls, findings);
    comparison.drying().ifPresent(d -> drying.put(survey, d));
    List<OperatorOffset> offsets = comparison.operators();
    if (!offsets.isEmpty()) {
      operators.put(survey, offsets);
    }
  }

  private Reading elsewhere(FieldRecord.Elsewhere e) {
    Reading r = e.reading();
    Reading.Label label = r.label();
    boolean labelled = e.distanceM() == 0 && !label.greenId().isEmpty();
    String name = label.stationId().isEmpty() ? label.at() : "station " + label.stationId();
    Rule rule = labelled ? Rule.LABEL : Rule.POSITION;
    findings.add(
        new Finding(
            rule,
            Severity.REJECT,
            label.surveyId(),
            label.greenId(),
            List.of(r),
            labelled
                ? "%s is labelled green %s but lies in green %s"
                    .formatted(name, label.greenId(), e.nearestGreen())
                : String.format(
                    Locale.ROOT,
                    "%s lies %.1f m outside green %s",
                    name,
                    e.distanceM(),
                    e.nearestGreen()),
            labelled
                ? "correct its green_id, or its position"
                : "correct its position, or give the plan and leave the position empty"));
    return new Reading(
        label,
        r.position(),
        r.moisture(),
        r.protocol(),
        r.role(),
        new Reading.Quality(rule.code(), Severity.REJECT.label(), false));
  }

  private ReviewedVisit graded(Sheet sheet) {
    String survey = sheet.visit.surveyId();
    return new ReviewedVisit(
        sheet.reviewed(),
        sheet.findings,
        sheet.errors,
        Grading.of(
            sheet,
            settings,
            Optional.ofNullable(drying.get(survey)),
            operators.getOrDefault(survey, List.of())),
        sheet.obstacle());
  }
}
