package org.mottle.engine.mapping;

import org.mottle.engine.check.Check;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.water.WateringSettings;

/**
 * What the person who maps can choose. {@link #defaults()} and the {@code with} methods build one.
 *
 * @param method kriging, inverse distance, or whichever the readings carry
 * @param cellM side of a cell, m
 * @param isoStepPct step between iso lines, % by volume
 * @param measurementSdPct standard deviation of one insertion, % by volume; NaN when not known. It
 *     only tells how much of the nugget that is reported is the probe's: the map filters the whole
 *     nugget, whosever it is, and is the same with any value here
 * @param duplicates what to do with readings of different stations at one place
 * @param variogram how the variogram is made
 * @param needed how many readings are needed for what
 * @param uncertainty how much is drawn to say how sure the map is
 * @param positions what is known of positions beyond what the readings say
 * @param watering how much water is wanted where
 */
public record MappingSettings(
    Method method,
    double cellM,
    double isoStepPct,
    double measurementSdPct,
    DuplicatePolicy duplicates,
    VariogramSettings variogram,
    Needed needed,
    UncertaintySettings uncertainty,
    PositionSettings positions,
    WateringSettings watering) {

  /**
   * How many readings are needed for what.
   *
   * @param map fewer than this on a green: a summary, no map
   * @param full fewer than this: the map is marked as indicative
   * @param ownVariogram at least this many: the green has a variogram of its own (Webster & Oliver
   *     1992 ask for 100 to 150)
   * @param pool fewer stations than this in a pool: an assumed range and nugget enter its variogram
   */
  public record Needed(int map, int full, int ownVariogram, int pool) {
    public static final Needed DEFAULT = new Needed(8, 12, 100, 60);
  }

  public MappingSettings {
    Check.above("cell", cellM, 0, "m");
    Check.above("iso step", isoStepPct, 0, "% by volume");
    if (!Double.isNaN(measurementSdPct)) {
      Check.atLeast("measurement SD", measurementSdPct, 0, "% by volume");
    }
  }

  public static MappingSettings defaults() {
    return new MappingSettings(
        Method.AUTO,
        0.5,
        1,
        Double.NaN,
        DuplicatePolicy.REJECT,
        VariogramSettings.defaults(),
        Needed.DEFAULT,
        UncertaintySettings.defaults(),
        PositionSettings.RECORDED,
        WateringSettings.defaults());
  }

  public MappingSettings withMethod(Method newMethod) {
    return with(newMethod, cellM, isoStepPct, duplicates);
  }

  public MappingSettings withCellM(double newCellM) {
    return with(method, newCellM, isoStepPct, duplicates);
  }

  public MappingSettings withIsoStepPct(double newStep) {
    return with(method, cellM, newStep, duplicates);
  }

  public MappingSettings withDuplicates(DuplicatePolicy newPolicy) {
    return with(method, cellM, isoStepPct, newPolicy);
  }

  private MappingSettings with(
      Method newMethod, double newCellM, double newStep, DuplicatePolicy newPolicy) {
    return new MappingSettings(
        newMethod,
        newCellM,
        newStep,
        measurementSdPct,
        newPolicy,
        variogram,
        needed,
        uncertainty,
        positions,
        watering);
  }

  public MappingSettings withMeasurementSdPct(double newSd) {
    return new MappingSettings(
        method,
        cellM,
        isoStepPct,
        newSd,
        duplicates,
        variogram,
        needed,
        uncertainty,
        positions,
        watering);
  }

  public MappingSettings withVariogram(VariogramSettings newVariogram) {
    return withParts(newVariogram, needed, uncertainty, positions, watering);
  }

  public MappingSettings withNeeded(Needed newNeeded) {
    return withParts(variogram, newNeeded, uncertainty, positions, watering);
  }

  public MappingSettings withUncertainty(UncertaintySettings newUncertainty) {
    return withParts(variogram, needed, newUncertainty, positions, watering);
  }

  public MappingSettings withPositions(PositionSettings newPositions) {
    return withParts(variogram, needed, uncertainty, newPositions, watering);
  }

  public MappingSettings withWatering(WateringSettings newWatering) {
    return withParts(variogram, needed, uncertainty, positions, newWatering);
  }

  private MappingSettings withParts(
      VariogramSettings newVariogram,
      Needed newNeeded,
      UncertaintySettings newUncertainty,
      PositionSettings newPositions,
      WateringSettings newWatering) {
    return new MappingSettings(
        method,
        cellM,
        isoStepPct,
        measurementSdPct,
        duplicates,
        newVariogram,
        newNeeded,
        newUncertainty,
        newPositions,
        newWatering);
  }
}
