package org.mottle.export.settings;

import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.moisture.PermittivityCurve;
import org.mottle.export.crs.Crs;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.InputOptions.MoistureUnit;

/**
 * What a settings file says.
 *
 * @param columns our field name to the heading in the site's files
 * @param bands what the site's agronomist wants
 * @param crs of files that carry none
 * @param workingCrs projected CRS to work in; empty: the UTM zone of the greens
 * @param unit of the readings
 * @param mapping how to map
 * @param curve by which permittivities become moisture
 * @param wateringAt when hand watering is planned; empty when not said
 */
public record SiteSettings(
    Map<String, String> columns,
    Bands bands,
    Optional<String> crs,
    Optional<String> workingCrs,
    MoistureUnit unit,
    MappingSettings mapping,
    Optional<PermittivityCurve> curve,
    Optional<OffsetDateTime> wateringAt) {

  public static final SiteSettings DEFAULTS =
      new SiteSettings(
          Map.of(),
          Bands.NONE,
          Optional.empty(),
          Optional.empty(),
          MoistureUnit.ASK,
          MappingSettings.defaults(),
          Optional.empty(),
          Optional.empty());

  public SiteSettings {
    columns = Map.copyOf(columns);
  }

  public SiteSettings withColumn(String field, String heading) {
    Map<String, String> more = new java.util.TreeMap<>(columns);
    more.put(field, heading);
    return new SiteSettings(more, bands, crs, workingCrs, unit, mapping, curve, wateringAt);
  }

  public SiteSettings withBands(Bands newBands) {
    return new SiteSettings(columns, newBands, crs, workingCrs, unit, mapping, curve, wateringAt);
  }

  public SiteSettings withCrs(String newCrs) {
    return new SiteSettings(
        columns, bands, Optional.of(newCrs), workingCrs, unit, mapping, curve, wateringAt);
  }

  public SiteSettings withWorkingCrs(String newCrs) {
    return new SiteSettings(
        columns, bands, crs, Optional.of(newCrs), unit, mapping, curve, wateringAt);
  }

  public SiteSettings withMapping(MappingSettings newMapping) {
    return new SiteSettings(columns, bands, crs, workingCrs, unit, newMapping, curve, wateringAt);
  }

  /** How the files are to be read. */
  public InputOptions inputOptions() {
    return new InputOptions(crs.map(Crs::parse), columns, unit, curve);
  }

  public SiteSettings withUnit(MoistureUnit newUnit) {
    return new SiteSettings(columns, bands, crs, workingCrs, newUnit, mapping, curve, wateringAt);
  }

  public SiteSettings withWateringAt(OffsetDateTime time) {
    return new SiteSettings(
        columns, bands, crs, workingCrs, unit, mapping, curve, Optional.of(time));
  }
}
