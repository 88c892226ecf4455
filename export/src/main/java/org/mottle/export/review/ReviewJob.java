package org.mottle.export.review;

import java.io.IOException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;
import org.mottle.export.field.FieldWork;
import org.mottle.export.job.InputRecord;
import org.mottle.export.job.ProgramVersion;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.LayerData;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Document;
import org.mottle.export.write.Format;

/** The review from files to files: read, place, review, deliver. Nothing is mapped. */
public final class ReviewJob {
  private static final String PAGE = "review.html";
  private static final String TABLE = "readings.csv";

  private final ReviewRequest request;

  public ReviewJob(ReviewRequest request) {
    this.request = request;
  }

  /**
   * @throws InputRefused when the input cannot be read; nothing has been written then
   * @throws IOException when a file cannot be read
   */
  public ReviewReport run(Progress progress) throws IOException {
    Delivery delivery =
        Delivery.of(
                request.folder(),
                request.overwrite(),
                EnumSet.of(Format.GEOPACKAGE, Format.GEOJSON, Format.SHAPEFILE))
            .withDocumentsAt(Set.of(PAGE, TABLE))
            .withThreads(request.threads());
    delivery.check();
    SiteSettings site = request.site();
    InputOptions options = site.inputOptions();
    Greens greens = GreensReader.read(request.greens(), options, site.workingCrs().map(Crs::parse));
    FieldWork work =
        FieldWork.of(
            greens, request.readings(), request.files(), options, request.survey(), progress);
    List<String> told = new ArrayList<>(greens.notes());
    told.addAll(work.notes());
    List<LayerData> layers = ReviewRows.of(greens, work.reviewed());
    Map<String, Object> figures = figures(work, told);
    Delivered delivered =
        delivery.write(
            layers,
            List.of(),
            List.of(
                Document.text(PAGE, ReviewPage.of(work.reviewed(), left(work))),
                Document.text(TABLE, ReviewedTable.csv(layers.get(1)))),
            greens.working(),
            provenance(greens, work),
            figures);
    return new ReviewReport(work, told, figures, delivered);
  }

  private static List<String> left(FieldWork work) {
    return work.left().stream()
        .map(
            r ->
                "row %d (%s, green %s, reading %d): no position"
                    .formatted(
                        r.label().row(),
                        r.label().surveyId(),
                        r.label().greenId(),
                        r.label().sequence()))
        .toList();
  }

  private static Map<String, Object> figures(FieldWork work, List<String> told) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("told", told);
    figures.put("visits", work.reviewed().visits().stream().map(ReviewJob::visit).toList());
    figures.put(
        "findings", work.reviewed().allFindings().stream().map(ReviewJob::finding).toList());
    figures.put("left", left(work));
    return figures;
  }

  private static Map<String, Object> visit(ReviewedVisit v) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("surv_id", v.visit().surveyId());
    one.put("green_id", v.visit().green().id());
    one.put("grade", v.grade().letter().name());
    one.put("why", v.grade().why());
    one.put("raise", v.grade().raise());
    one.put("mappable", v.obstacle().isEmpty());
    Map<String, Object> errors = new LinkedHashMap<>();
    v.errors().forEach(e -> errors.put(e.what(), Math.sqrt(e.variance())));
    one.put("common_sd_pct", errors);
    return one;
  }

  private static Map<String, Object> finding(Finding f) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("qa_code", f.rule().code());
    one.put("qa_stat", f.severity().label());
    one.put("surv_id", f.surveyId());
    one.put("green_id", f.greenId());
    one.put("st_id", f.readings().stream().map(r -> r.label().stationId()).distinct().toList());
    one.put("reason", f.reason());
    one.put("remedy", f.remedy());
    return one;
  }

  private Provenance provenance(Greens greens, FieldWork work) throws IOException {
    List<InputFile> inputs = new ArrayList<>(InputRecord.of(request.greens()));
    for (String file : request.readings()) {
      inputs.addAll(InputRecord.of(file));
    }
    for (String file : request.files().all()) {
      inputs.addAll(InputRecord.of(file));
    }
    Map<String, Object> parameters = new LinkedHashMap<>();
    parameters.put("columns", request.site().columns());
    parameters.put("calibration", request.site().curve().map(Object::toString).orElse(""));
    parameters.put("unit", SettingsReader.label(request.site().unit()));
    parameters.put("survey", request.survey().orElse("all"));
    String runId =
        Fingerprint.ofText(
            Json.text(inputs.stream().map(InputFile::sha256).toList())
                + Json.text(parameters)
                + greens.working().code()
                + ProgramVersion.current(),
            12);
    return new Provenance(
        runId, ProgramVersion.current(), lastReading(work), inputs, parameters, 0, "");
  }

  /** Of the data, not of the clock, so that two runs are alike. */
  private static Instant lastReading(FieldWork work) {
    Instant last = Instant.EPOCH;
    for (ReviewedVisit v : work.reviewed().visits()) {
      for (Reading r : v.visit().readings()) {
        try {
          Instant time = OffsetDateTime.parse(r.protocol().time()).toInstant();
          last = time.isAfter(last) ? time : last;
        } catch (DateTimeParseException e) {
          continue; // a time without an offset names no instant
        }
      }
    }
    return last;
  }
}
