package org.mottle.export.plan;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.design.PlanSettings;
import org.mottle.export.crs.Crs;
import org.mottle.export.job.InputRecord;
import org.mottle.export.job.ProgramVersion;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;

/** The record of a planning run. A plan has no readings, so its time is the epoch's. */
final class PlanRecord {
  private PlanRecord() {}

  static Provenance of(PlanRequest request, PlanSettings settings, Crs working) throws IOException {
    List<InputFile> inputs = new ArrayList<>(InputRecord.of(request.inputs().greens()));
    if (request.inputs().model().isPresent()) {
      inputs.add(InputFile.of(request.inputs().model().get()));
    }
    for (String file : request.choice().earlier()) {
      inputs.addAll(InputRecord.of(file));
    }
    if (request.choice().areas().isPresent()) {
      inputs.addAll(InputRecord.of(request.choice().areas().get()));
    }
    Map<String, Object> parameters = parameters(request, settings);
    String runId =
        Fingerprint.ofText(
            Json.text(inputs.stream().map(InputFile::sha256).toList())
                + Json.text(parameters)
                + working.code()
                + ProgramVersion.current(),
            12);
    return new Provenance(
        runId, ProgramVersion.current(), Instant.EPOCH, inputs, parameters, settings.seed(), "");
  }

  private static Map<String, Object> parameters(PlanRequest request, PlanSettings s) {
    Map<String, Object> p = new LinkedHashMap<>();
    p.put("design", request.choice().name());
    p.put("bearing_deg", request.choice().bearingDeg());
    p.put("stations", s.stations());
    p.put("close_pairs", s.closePairs());
    p.put("pair_m", s.pairM());
    p.put("read_twice", s.twice());
    p.put("control", s.control());
    p.put("inset_m", s.insetM());
    p.put("seed", Long.toString(s.seed()));
    request
        .aim()
        .ifPresent(
            aim -> {
              p.put("sd_pct", aim.sdPct());
              p.put("margin_pct", aim.marginPct());
            });
    p.put("columns", request.site().columns());
    return p;
  }
}
