package org.mottle.export.read;

import java.util.Map;
import java.util.Optional;
import org.mottle.export.crs.Crs;

/**
 * What the user said about the files.
 *
 * @param crs of the files that name none themselves
 * @param columns heading in the file by the name used here: {@code vwc_raw} to "Moisture %"
 * @param moistureUnit unit of the moisture column
 */
public record InputOptions(
    Optional<Crs> crs, Map<String, String> columns, MoistureUnit moistureUnit) {
  public static final InputOptions NONE =
      new InputOptions(Optional.empty(), Map.of(), MoistureUnit.ASK);

  /** Unit of the moisture column. */
  public enum MoistureUnit {
    /** Per cent, unless every value is below 1: then the user is asked. */
    ASK,
    /** Per cent by volume, however small. */
    PERCENT,
    /** Fractions, to be multiplied by 100. */
    FRACTION
  }

  public InputOptions {
    columns = Map.copyOf(columns);
  }

  public InputOptions withCrs(Crs wanted) {
    return new InputOptions(Optional.of(wanted), columns, moistureUnit);
  }

  public InputOptions withColumns(Map<String, String> wanted) {
    return new InputOptions(crs, wanted, moistureUnit);
  }

  public InputOptions withMoistureUnit(MoistureUnit wanted) {
    return new InputOptions(crs, columns, wanted);
  }
}
