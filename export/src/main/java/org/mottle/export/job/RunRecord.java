package org.mottle.export.job;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.WateringSettings;
import org.mottle.export.read.Greens;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.settings.SettingsReader;

/** The record of a run: inputs by fingerprint, settings in force, time of the data. */
public final class RunRecord {

  private RunRecord() {}

  static Provenance of(MapRequest request, Greens greens, SurveyMap map) throws IOException {
    List<InputFile> inputs = new ArrayList<>(InputRecord.of(request.inputs().greens()));
    inputs.addAll(InputRecord.of(request.inputs().readings()));
    for (String file : request.field().all()) {
      inputs.addAll(InputRecord.of(file));
    }
    if (request.heads().isPresent()) {
      inputs.addAll(InputRecord.of(request.heads().get()));
    }
    for (String file : request.imagery()) {
      inputs.addAll(InputRecord.of(file));
    }
    Map<String, Object> parameters = parameters(request);
    parameters.put("bands", bands(map));
    String runId =
        Fingerprint.ofText(
            Json.text(inputs.stream().map(InputFile::sha256).toList())
                + Json.text(parameters)
                + greens.working().code()
                + ProgramVersion.current(),
            12);
    return new Provenance(
        runId,
        ProgramVersion.current(),
        lastReading(map),
        inputs,
        parameters,
        request.site().mapping().uncertainty().seed(),
        "");
  }

  /** The settings in force, for the record. */
  private static Map<String, Object> parameters(MapRequest request) {
    MappingSettings m = request.site().mapping();
    Map<String, Object> p = new LinkedHashMap<>();
    p.put("method", m.method().label());
    p.put("cell_m", m.cellM());
    p.put("iso_step_pct", m.isoStepPct());
    p.put("measurement_sd_pct", m.measurementSdPct());
    p.put("duplicates", SettingsReader.label(m.duplicates()));
    p.put("variogram_pool", m.variogram().pooling().label());
    p.put("variogram_model", m.variogram().shape().map(SettingsReader::label).orElse("auto"));
    p.put("variogram_cutoff_m", m.variogram().cutoffM());
    p.put("variogram_lag_m", m.variogram().lagM());
    p.put("variogram_estimator", SettingsReader.label(m.variogram().estimator()));
    p.put("needed_map", m.needed().map());
    p.put("needed_full", m.needed().full());
    p.put("needed_own_variogram", m.needed().ownVariogram());
    p.put("needed_pool", m.needed().pool());
    p.put("realisations", m.uncertainty().realisations());
    p.put("draws", m.uncertainty().draws());
    p.put("seed", Long.toString(m.uncertainty().seed()));
    p.put("next_stations", m.uncertainty().nextStations());
    p.put("operator_sd_pct", m.uncertainty().operatorSdPct());
    p.put("jitter_m", m.positions().jitterM());
    p.put("shift_m", m.positions().shiftM());
    WateringSettings w = m.watering();
    p.put("water_target_share", w.targetShare());
    p.put("water_efficiency", w.efficiency());
    p.put("water_cap_mm", w.capMm());
    p.put("water_flow_l_min", w.flowLMin());
    p.put("water_root_mm", w.rootMm());
    p.put("water_turf", w.turf().label());
    p.put("water_kc", w.kc());
    p.put("water_turf_mm", w.outlook().turfMm());
    p.put("water_rain_mm", w.outlook().rainMm());
    p.put("water_at", request.site().wateringAt().map(Object::toString).orElse(""));
    p.put("columns", request.site().columns());
    p.put("survey", request.inputs().survey().orElse("all"));
    p.put("calibration", request.site().curve().map(Object::toString).orElse(""));
    p.put("unit", SettingsReader.label(request.site().unit()));
    return p;
  }

  /** The bands in force, for the record. */
  public static Map<String, Object> bands(SurveyMap map) {
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
            one.put("assumed", b.assumed());
            String green = outcome.subject().green().id();
            // a band about a visit's own median differs from visit to visit
            boolean other = bands.containsKey(green) && !one.equals(bands.get(green));
            bands.put(other ? outcome.subject().label() : green, one);
          });
    }
    return bands;
  }

  /** The record's time stamp: of the data, not of the clock, so that two runs are alike. */
  public static Instant lastReading(SurveyMap map) {
    Instant last = Instant.EPOCH;
    for (Outcome outcome : map.outcomes()) {
      for (Reading r : outcome.subject().readings()) {
        try {
          Instant time = OffsetDateTime.parse(r.protocol().time()).toInstant();
          last = time.isAfter(last) ? time : last;
        } catch (DateTimeException e) {
          continue; // a time without an offset names no instant
        }
      }
    }
    return last;
  }
}
