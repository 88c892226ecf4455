package org.mottle.export.record;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.export.crs.Crs;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/**
 * Record of a run, written into every file it delivers. Two runs with equal records and equal rows
 * give the same bytes, so the time stamp is the caller's and not the clock's of the writer.
 *
 * @param runId names the run; stamped into every row
 * @param version of the program
 * @param utc time stamp of the run, cut to milliseconds
 * @param inputs files read, in the order they were named
 * @param parameters settings in force: maps, lists, texts, numbers, booleans, nulls
 * @param seed of the random numbers
 * @param credit licence and credit of the data; may be empty
 */
public record Provenance(
    String runId,
    String version,
    Instant utc,
    List<InputFile> inputs,
    Map<String, ?> parameters,
    long seed,
    String credit) {

  public static final String ENGINE = "Mottle";
  public static final String DISCLAIMER =
      "Decision support. Measurements and estimates with stated uncertainty; the site's"
          + " agronomist or course manager decides.";

  public Provenance {
    if (runId.isBlank()) {
      throw new IllegalArgumentException("a run needs an id, was '" + runId + "'");
    }
    utc = utc.truncatedTo(ChronoUnit.MILLIS);
    inputs = List.copyOf(inputs);
  }

  /** The table {@code prov}: one row. */
  public LayerData table(Crs crs) {
    Map<String, Object> row = fields(crs);
    row.put("inputs", Json.text(inputsAsMaps()));
    row.put("params", Json.text(parameters));
    return new LayerData(Layers.PROV, List.of(Layers.PROV.row(row)));
  }

  /** The same record for JSON, with the inputs and the settings as structures. */
  public Map<String, Object> asMap(Crs crs) {
    Map<String, Object> map = fields(crs);
    map.put("inputs", inputsAsMaps());
    map.put("params", parameters);
    return map;
  }

  private Map<String, Object> fields(Crs crs) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("run_id", runId);
    map.put("engine", ENGINE);
    map.put("version", version);
    map.put("utc", utc.toString());
    map.put("inputs", null);
    map.put("params", null);
    // text: JSON readers lose digits of whole numbers beyond 2^53
    map.put("seed", Long.toString(seed));
    map.put("crs_code", crs.code());
    map.put("crs_name", crs.name());
    map.put("crs_wkt", crs.wkt());
    map.put("credit", credit);
    map.put("disclaim", DISCLAIMER);
    return map;
  }

  private List<Map<String, Object>> inputsAsMaps() {
    List<Map<String, Object>> maps = new ArrayList<>();
    for (InputFile input : inputs) {
      Map<String, Object> map = new LinkedHashMap<>();
      map.put("name", input.name());
      map.put("bytes", input.bytes());
      map.put("sha256", input.sha256());
      maps.add(map);
    }
    return maps;
  }
}
