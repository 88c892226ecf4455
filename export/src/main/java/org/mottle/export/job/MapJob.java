package org.mottle.export.job;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.mapping.Coincidence;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.Readings;
import org.mottle.export.read.ReadingsReader;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.LayerData;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Format;
import org.mottle.export.write.NamedRaster;

/**
 * The main job from files to files: read, check, map, deliver. Nothing is written before the end.
 */
public final class MapJob {
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
            .withThreads(request.threads());
    delivery.check();
    Greens greens = greens();
    Readings readings =
        ReadingsReader.read(
            request.inputs().readings(), inputOptions(), greens, request.inputs().survey());
    List<String> told = new ArrayList<>(greens.notes());
    told.addAll(readings.notes());
    readings.outside().forEach(o -> told.add(o.line() + "; not mapped"));
    List<GreenSurvey> subjects = subjects(greens, readings);
    check(subjects);
    tellBands(subjects, told);
    DoubtfulReadings.of(subjects, readings.source()).forEach(told::add);

    SurveyMap map =
        new SurveyMapper(request.site().mapping()).map(subjects, request.threads(), progress);

    List<Reading> outside = readings.outside().stream().map(Readings.Outside::reading).toList();
    List<LayerData> layers = MapLayers.of(map, outside, request.output().cells());
    Map<String, Object> figures = MapFigures.of(map, layers, told);
    progress.check();
    Delivered delivered =
        delivery.write(
            layers, rasters(map), greens.working(), provenance(greens, readings, map), figures);
    return new MapReport(map, told, figures, delivered);
  }

  private Greens greens() {
    Optional<Crs> working = request.site().workingCrs().map(Crs::parse);
    return GreensReader.read(request.inputs().greens(), inputOptions(), working);
  }

  private InputOptions inputOptions() {
    SiteSettings site = request.site();
    return new InputOptions(site.crs().map(Crs::parse), site.columns(), site.unit());
  }

  /** One a green and survey, in the order of the greens' file and of the surveys' first reading. */
  private List<GreenSurvey> subjects(Greens greens, Readings readings) {
    Set<String> surveys = new LinkedHashSet<>();
    readings.readings().forEach(r -> surveys.add(r.label().surveyId()));
    Optional<String> only = request.inputs().survey();
    if (only.isPresent() && !surveys.contains(only.get())) {
      throw new InputRefused(
          "%s has no survey '%s'; it has %s"
              .formatted(readings.source(), only.get(), Problems.listed(List.copyOf(surveys))));
    }
    only.ifPresent(id -> surveys.retainAll(Set.of(id)));
    Map<String, Map<String, List<Reading>>> byGreen = new LinkedHashMap<>();
    for (Reading r : readings.readings()) {
      byGreen
          .computeIfAbsent(r.label().greenId(), k -> new LinkedHashMap<>())
          .computeIfAbsent(r.label().surveyId(), k -> new ArrayList<>())
          .add(r);
    }
    List<GreenSurvey> subjects = new ArrayList<>();
    for (String survey : surveys) {
      for (Green green : greens.greens()) {
        List<Reading> own =
            byGreen.getOrDefault(green.id(), Map.of()).getOrDefault(survey, List.of());
        // a green that one of several surveys left out is no failure of that survey
        if (!own.isEmpty() || surveys.size() == 1) {
          subjects.add(new GreenSurvey(green, survey, own, request.site().bands().bandOf(green)));
        }
      }
    }
    return subjects;
  }

  private void check(List<GreenSurvey> subjects) {
    Problems problems = new Problems();
    if (request.site().mapping().duplicates() == DuplicatePolicy.REJECT) {
      for (GreenSurvey subject : subjects) {
        for (Coincidence pair : Coincidence.of(subject)) {
          problems.add(
              "%s; use --duplicates average or keep-first, or correct the file", pair.toString());
        }
      }
    }
    for (String green : request.site().bands().greens().keySet()) {
      problems.require(
          subjects.stream().anyMatch(s -> s.green().id().equals(green)),
          "%s, bands.greens: there is no green '%s'; there are %s",
          request.site().bands().source(),
          green,
          Problems.listed(subjects.stream().map(s -> s.green().id()).distinct().toList()));
    }
    problems.throwIfAny();
  }

  private void tellBands(List<GreenSurvey> subjects, List<String> told) {
    List<String> without =
        subjects.stream()
            .filter(s -> s.band().isEmpty() && request.site().bands().hasRuleFor(s.green()))
            .map(s -> s.green().id())
            .distinct()
            .toList();
    if (!without.isEmpty()) {
      told.add(
          "no classes for green "
              + Problems.listed(without)
              + ": a band by purpose needs field capacity and wilt onset (fc_pct, wp_pct)");
    } else if (subjects.stream().allMatch(s -> s.band().isEmpty())) {
      told.add("no classes: no band is set; the site's agronomist sets it in the settings");
    }
  }

  private List<NamedRaster> rasters(SurveyMap map) {
    if (!request.output().formats().contains(Format.RASTER)) {
      return List.of();
    }
    return map.outcomes().stream()
        .filter(Outcome.Mapped.class::isInstance)
        .flatMap(o -> MapRasters.of((Outcome.Mapped) o).stream())
        .toList();
  }

  private Provenance provenance(Greens greens, Readings readings, SurveyMap map)
      throws IOException {
    List<InputFile> inputs = new ArrayList<>(InputRecord.of(request.inputs().greens()));
    inputs.addAll(InputRecord.of(request.inputs().readings()));
    Map<String, Object> parameters = MapFigures.parameters(request);
    parameters.put("bands", bands(map));
    String runId =
        Fingerprint.ofText(
            Json.text(inputs.stream().map(InputFile::sha256).toList())
                + Json.text(parameters)
                + greens.working().code()
                + ProgramVersion.current(),
            12);
    return new Provenance(
        runId, ProgramVersion.current(), lastReading(readings), inputs, parameters, 0, "");
  }

  private static Map<String, Object> bands(SurveyMap map) {
    Map<String, Object> bands = new LinkedHashMap<>();
    for (Outcome outcome : map.outcomes()) {
      Optional<TargetBand> band = outcome.subject().band();
      band.ifPresent(
          b -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("purpose", b.purpose());
            one.put("lo_pct", b.lowPct());
            one.put("hi_pct", b.highPct());
            one.put("by", b.by());
            one.put("on", b.on());
            bands.put(outcome.subject().green().id(), one);
          });
    }
    return bands;
  }

  /** The record's time stamp: of the data, not of the clock, so that two runs are alike. */
  private static Instant lastReading(Readings readings) {
    Instant last = Instant.EPOCH;
    for (Reading r : readings.readings()) {
      try {
        Instant time = OffsetDateTime.parse(r.protocol().time()).toInstant();
        last = time.isAfter(last) ? time : last;
      } catch (DateTimeException e) {
        continue; // a time without an offset names no instant
      }
    }
    return last;
  }
}
