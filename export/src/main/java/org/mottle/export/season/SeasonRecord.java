package org.mottle.export.season;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.export.job.InputRecord;
import org.mottle.export.job.ProgramVersion;
import org.mottle.export.job.RunRecord;
import org.mottle.export.read.Greens;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;

/** The record of a season's run. */
final class SeasonRecord {
  private SeasonRecord() {}

  static Provenance of(SeasonRequest request, Greens greens, SurveyMap map) throws IOException {
    SeasonRequest.Inputs in = request.inputs();
    List<String> files = new ArrayList<>();
    files.add(in.greens());
    files.addAll(in.readings());
    files.addAll(in.files().all());
    files.addAll(in.elevation());
    in.heads().ifPresent(files::add);
    request.repair().ifPresent(r -> files.add(r.areas()));
    List<InputFile> inputs = new ArrayList<>();
    for (String file : files) {
      inputs.addAll(InputRecord.of(file));
    }
    MappingSettings m = request.site().mapping();
    Map<String, Object> p = new LinkedHashMap<>();
    p.put("cell_m", m.cellM());
    p.put("draws", m.uncertainty().draws());
    p.put("seed", Long.toString(m.uncertainty().seed()));
    p.put("change_limit_pct", request.changeLimitPct());
    p.put("columns", request.site().columns());
    p.put("bands", RunRecord.bands(map));
    String runId =
        Fingerprint.ofText(
            Json.text(inputs.stream().map(InputFile::sha256).toList())
                + Json.text(p)
                + greens.working().code()
                + ProgramVersion.current(),
            12);
    return new Provenance(
        runId,
        ProgramVersion.current(),
        RunRecord.lastReading(map),
        inputs,
        p,
        m.uncertainty().seed(),
        "");
  }
}
