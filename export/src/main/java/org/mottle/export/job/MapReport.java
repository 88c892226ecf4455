package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;

/**
 * What a run has to say.
 *
 * @param map what the engine found
 * @param told what was detected or decided on the way, for the user to see
 * @param figures of the summary
 * @param delivered the files
 */
public record MapReport(
    SurveyMap map, List<String> told, Map<String, ?> figures, Delivered delivered) {

  public MapReport {
    told = List.copyOf(told);
  }

  /** Whether every green asked for has a map. */
  public boolean allMapped() {
    return map.notMapped().isEmpty();
  }

  /** One line a green without a map, with the reason. */
  public List<String> unmapped() {
    return map.notMapped().stream().map(GreenLine::of).toList();
  }

  public String json() {
    return Json.text(figures);
  }

  /** For the terminal: what was told, one line a green and a variogram, where the files are. */
  public String text() {
    List<String> lines = new ArrayList<>(told);
    map.outcomes().forEach(outcome -> lines.add(GreenLine.of(outcome)));
    map.variograms().forEach(variogram -> lines.add(VariogramLine.of(variogram, map)));
    lines.addAll(delivered.notes());
    lines.add(
        map.maps().size()
            + " of "
            + map.outcomes().size()
            + " mapped; "
            + delivered.files().size()
            + " files in "
            + delivered.folder());
    lines.add(Provenance.DISCLAIMER);
    return String.join("\n", lines) + "\n";
  }
}
