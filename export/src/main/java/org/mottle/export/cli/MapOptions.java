package org.mottle.export.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.InputOptions.MoistureUnit;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;
import picocli.CommandLine.Option;

/** Options of {@code map} and {@code demo}: how to map and what to write. */
final class MapOptions {

  @Option(
      names = "--method",
      paramLabel = "NAME",
      description = "auto, kriging or inverse-distance; default auto.")
  String method;

  @Option(
      names = "--cell",
      paramLabel = "M",
      description = "Side of a cell, m; default 0.5, or what the settings say.")
  Double cell;

  @Option(
      names = "--duplicates",
      paramLabel = "NAME",
      description = "Stations that share a place: reject, average or keep-first; default reject.")
  String duplicates;

  @Option(
      names = "--unit",
      paramLabel = "NAME",
      description =
          "Unit of the readings: percent or fraction; default ask: per cent, asking when all are below"
              + " 1.")
  String unit;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of the realisations; default 0. The same seed gives the same bytes.")
  Long seed;

  @Option(
      names = "--realisations",
      paramLabel = "N",
      description = "Realisations drawn, from which areas get their intervals; default 500.")
  Integer realisations;

  @Option(
      names = "--next-stations",
      paramLabel = "N",
      description = "Places to read next proposed on each green; default 6, 0 for none.")
  Integer nextStations;

  @Option(
      names = "--position-sd",
      paramLabel = "M",
      description =
          "Standard error per axis of every position, m; default: what the readings say (pos_sd_m,"
              + " pos_src).")
  Double positionSd;

  @Option(
      names = "--shift-sd",
      paramLabel = "M",
      description =
          "Standard error per axis of the shift common to a visit, m; default: as is usual for the"
              + " source of the positions.")
  Double shiftSd;

  @Option(
      names = "--formats",
      paramLabel = "NAME,...",
      split = ",",
      hideParamSyntax = true,
      description = "geopackage, geojson, shapefile, raster; default: all.")
  List<String> formats = List.of();

  @Option(
      names = "--cells",
      description = "Also write the cells, clipped to the greens, as a layer.")
  boolean cells;

  /** Whether a GeoPackage will be written, as far as the names typed can be read. */
  boolean wantsGeoPackage() {
    return formats.isEmpty() || formats.contains("geopackage");
  }

  Set<Format> formats(Problems problems) {
    if (formats.isEmpty()) {
      return EnumSet.allOf(Format.class);
    }
    Set<Format> chosen = EnumSet.noneOf(Format.class);
    for (String name : formats) {
      Optional<Format> format = Format.ofName(name);
      format.ifPresentOrElse(
          chosen::add,
          () ->
              problems.add(
                  "--formats: unknown '%s'; known: geopackage, geojson, shapefile, raster", name));
    }
    return chosen;
  }

  /** The settings with what was typed in their place. */
  SiteSettings apply(SiteSettings site, Problems problems) {
    SiteSettings changed = site.withMapping(apply(site.mapping(), problems));
    if (unit != null) {
      MoistureUnit chosen =
          VariogramCommand.choice("--unit", unit, MoistureUnit.values(), problems);
      changed = chosen == null ? changed : changed.withUnit(chosen);
    }
    return changed;
  }

  private MappingSettings apply(MappingSettings settings, Problems problems) {
    MappingSettings changed = settings;
    if (method != null) {
      Method chosen = VariogramCommand.choice("--method", method, Method.values(), problems);
      changed = chosen == null ? changed : changed.withMethod(chosen);
    }
    if (duplicates != null) {
      DuplicatePolicy chosen =
          VariogramCommand.choice("--duplicates", duplicates, DuplicatePolicy.values(), problems);
      changed = chosen == null ? changed : changed.withDuplicates(chosen);
    }
    if (cell != null) {
      if (cell > 0 && Double.isFinite(cell)) {
        changed = changed.withCellM(cell);
      } else {
        problems.add("--cell must be above 0 m, was %s", cell);
      }
    }
    return changed
        .withUncertainty(uncertainty(changed.uncertainty(), problems))
        .withPositions(positions(changed.positions(), problems));
  }

  private UncertaintySettings uncertainty(UncertaintySettings settings, Problems problems) {
    UncertaintySettings changed = seed == null ? settings : settings.withSeed(seed);
    if (realisations != null) {
      if (realisations >= 1 && realisations <= UncertaintySettings.MOST) {
        changed = changed.withRealisations(realisations);
      } else {
        problems.add(
            "--realisations must be 1 to %s, was %s", UncertaintySettings.MOST, realisations);
      }
    }
    if (nextStations != null) {
      if (nextStations >= 0 && nextStations <= UncertaintySettings.MOST) {
        changed = changed.withNextStations(nextStations);
      } else {
        problems.add(
            "--next-stations must be 0 to %s, was %s", UncertaintySettings.MOST, nextStations);
      }
    }
    return changed;
  }

  private PositionSettings positions(PositionSettings settings, Problems problems) {
    return new PositionSettings(
        metres("--position-sd", positionSd, settings.jitterM(), problems),
        metres("--shift-sd", shiftSd, settings.shiftM(), problems));
  }

  private static double metres(String option, Double typed, double before, Problems problems) {
    if (typed == null) {
      return before;
    }
    if (typed >= 0 && typed <= PositionSettings.MOST_M) {
      return typed;
    }
    problems.add(
        "%s must lie between 0 and %.0f m, was %s", option, PositionSettings.MOST_M, typed);
    return before;
  }
}
