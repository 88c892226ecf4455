package org.mottle.export.read;

import java.util.Map;
import java.util.Optional;
import org.mottle.engine.moisture.PermittivityCurve;
import org.mottle.export.crs.Crs;

/**
 * What the user said about the files.
 *
 * @param crs of the files that name none themselves
 * @param columns heading in the file by the name used here: {@code vwc_raw} to "Moisture %"
 * @param moistureUnit unit of the moisture column
 * @param curve by which permittivities become moisture, where the file has those
 */
public record InputOptions(
    Optional<Crs> crs,
    Map<String, String> columns,
    MoistureUnit moistureUnit,
    Optional<PermittivityCurve> curve) {
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

  /** Of files that hold moisture, not permittivity. */
  public InputOptions(Optional<Crs> crs, Map<String, String> columns, MoistureUnit moistureUnit) {
    this(crs, columns, moistureUnit, Optional.empty());
  }

  public InputOptions withCrs(Crs wanted) {
    return new InputOptions(Optional.of(wanted), columns, moistureUnit, curve);
  }

  public InputOptions withColumns(Map<String, String> wanted) {
    return new InputOptions(crs, wanted, moistureUnit, curve);
  }

  public InputOptions withMoistureUnit(MoistureUnit wanted) {
    return new InputOptions(crs, columns, wanted, curve);
  }
}
