package org.mottle.export.job;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.course.VisitRecord;
import org.mottle.engine.irrigation.HeadEvidence;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.irrigation.SectorPrior;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.review.Severity;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;
import org.mottle.export.field.FieldWork;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.AerialImage;
import org.mottle.export.read.AerialImageReader;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.Heads;
import org.mottle.export.read.HeadsReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.Readings;
import org.mottle.export.read.ReadingsReader;
import org.mottle.export.record.Provenance;
import org.mottle.export.report.CoursePage;
import org.mottle.export.report.ReportMatter;
import org.mottle.export.report.ReportPage;
import org.mottle.export.report.WateringPage;
import org.mottle.export.schema.LayerData;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Document;
import org.mottle.export.write.Format;
import org.mottle.export.write.NamedRaster;

/**
 * The main job from files to files: read, check, map, deliver. Nothing is written before the end.
 */
public final class MapJob {
  private static final String COURSE_PAGE = "course.html";
  private static final String WATERING_PAGE = "watering.html";
  private static final String REPORT_PAGE = "report.html";

  private final MapRequest request;

  public MapJob(MapRequest request) {
    this.request = request;
  }

  /**
   * @throws InputRefused when the input cannot be mapped; nothing has been written then
   * @throws IOException when a file cannot be read
   */
  public MapReport run(Progress progress) throws IOException {
    Delivery delivery =
        Delivery.of(
                request.output().folder(), request.output().overwrite(), request.output().formats())
            .withDocumentsAt(Set.of(COURSE_PAGE, WATERING_PAGE, REPORT_PAGE))
            .withThreads(request.threads());
    delivery.check();
    Greens greens = greens();
    List<String> told = new ArrayList<>(greens.notes());
    Taken taken = request.field().isEmpty() ? asRead(greens) : reviewed(greens, progress);
    told.addAll(taken.told());
    Optional<Heads> heads =
        request.heads().map(file -> HeadsReader.read(file, inputOptions(), greens));
    heads.ifPresent(h -> told.addAll(h.notes()));
    List<GreenSurvey> subjects = taken.subjects();
    List<AerialImage> imagery = imagery(subjects, greens);
    imagery.forEach(i -> told.add(i.note()));
    told.addAll(Subjects.unread(subjects, greens));
    told.addAll(BandsTold.of(subjects, request.site().bands()));
    told.addAll(UntoldPositions.of(subjects, request.site().mapping().positions()));

    SurveyMap map =
        new SurveyMapper(request.site().mapping()).map(subjects, request.threads(), progress);

    Decided decided =
        Decided.of(
            map,
            taken.records(),
            request.site().wateringAt(),
            heads.map(h -> evidence(h, map, taken, progress)).orElse(List.of()));
    told.addAll(HeadLines.of(decided.heads()));
    List<LayerData> layers = MapLayers.of(decided, taken.outside(), request.output().cells());
    Map<String, Object> figures = MapFigures.of(map, layers, told);
    progress.check();
    Provenance record = RunRecord.of(request, greens, map);
    ReportMatter matter =
        new ReportMatter(
            map, decided.visits(), decided.heads(), decided.watering(), taken.findings(), imagery);
    List<Document> pages = new ArrayList<>(pages(decided));
    pages.add(Document.text(REPORT_PAGE, ReportPage.of(matter, record, greens.working())));
    Delivered delivered =
        delivery.write(layers, rasters(map), pages, greens.working(), record, figures);
    return new MapReport(map, told, figures, delivered);
  }

  /** What is mapped, what lies outside, and what is to be told of it. */
  private record Taken(
      List<GreenSurvey> subjects,
      List<Reading> outside,
      List<VisitRecord> records,
      List<Finding> findings,
      List<String> told) {}

  /** Aerial images, refused before the long computation. */
  private List<AerialImage> imagery(List<GreenSurvey> subjects, Greens greens) throws IOException {
    Envelope ground = new Envelope();
    subjects.forEach(s -> ground.expandToInclude(s.green().outline().getEnvelopeInternal()));
    List<AerialImage> images = new ArrayList<>();
    for (String file : request.imagery()) {
      images.add(
          AerialImageReader.read(
              file, inputOptions(), greens.working(), ground, request.imagery().size()));
    }
    return images;
  }

  private List<HeadFinding> evidence(Heads heads, SurveyMap map, Taken taken, Progress progress) {
    List<Conditions> conditions =
        taken.records().stream().flatMap(r -> r.conditions().stream()).toList();
    return HeadEvidence.of(
        map, heads.heads(), conditions, SectorPrior.DEFAULT, request.threads(), progress);
  }

  private List<Document> pages(Decided decided) {
    return List.of(
        Document.text(
            COURSE_PAGE,
            CoursePage.of(decided.course(), decided.heads(), request.site().mapping().watering())),
        Document.text(
            WATERING_PAGE,
            WateringPage.of(
                decided.watering(), decided.map(), request.site().mapping().watering())));
  }

  private Taken asRead(Greens greens) {
    Readings readings =
        ReadingsReader.read(
            request.inputs().readings(), inputOptions(), greens, request.inputs().survey());
    List<String> told = new ArrayList<>(readings.notes());
    readings.outside().forEach(o -> told.add(o.line() + "; not mapped"));
    List<GreenSurvey> subjects = new Subjects(request).of(greens, readings);
    told.addAll(DoubtfulReadings.of(subjects, readings.source()));
    return new Taken(
        subjects,
        readings.outside().stream().map(Readings.Outside::reading).toList(),
        List.of(),
        List.of(),
        told);
  }

  /** With what was recorded beside the readings: placed, made comparable, checked. */
  private Taken reviewed(Greens greens, Progress progress) {
    FieldWork work =
        FieldWork.of(
            greens,
            List.of(request.inputs().readings()),
            request.field(),
            inputOptions(),
            request.inputs().survey(),
            progress);
    List<String> told = new ArrayList<>(work.notes());
    for (Finding finding : work.reviewed().allFindings()) {
      if (finding.severity() != Severity.NOTE) {
        told.add(finding.line());
      }
    }
    return new Taken(
        new Subjects(request).of(greens, work),
        work.reviewed().elsewhere(),
        work.reviewed().visits().stream().map(MapJob::record).toList(),
        work.reviewed().allFindings(),
        told);
  }

  private static VisitRecord record(ReviewedVisit v) {
    return new VisitRecord(
        v.visit().green().id(),
        v.visit().surveyId(),
        v.visit().conditions(),
        Optional.of(v.grade()));
  }

  private Greens greens() {
    Optional<Crs> working = request.site().workingCrs().map(Crs::parse);
    return GreensReader.read(request.inputs().greens(), inputOptions(), working);
  }

  private InputOptions inputOptions() {
    SiteSettings site = request.site();
    return site.inputOptions();
  }

  private List<NamedRaster> rasters(SurveyMap map) {
    if (!request.output().formats().contains(Format.RASTER)) {
      return List.of();
    }
    return map.maps().stream().flatMap(m -> MapRasters.of(m).stream()).toList();
  }
}
