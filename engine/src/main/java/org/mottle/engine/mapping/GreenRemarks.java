package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.variogram.NestedModel;

/** What a reader of a map should know, and how far the map can be trusted for it. */
final class GreenRemarks {
  /** Cells wider than this share of the root of the area do not draw a green. */
  private static final double COARSEST = 0.2;

  /** Position errors that blur away more than this share of the structure leave no outline. */
  private static final double MOST_BLURRED = 0.5;

  private final MappingSettings settings;
  private final List<String> lines = new ArrayList<>();
  private Standing standing = Standing.PATCHES;

  GreenRemarks(MappingSettings settings) {
    this.settings = settings;
  }

  List<String> lines() {
    return List.copyOf(lines);
  }

  Standing standing() {
    return standing;
  }

  void add(String line) {
    lines.add(line);
  }

  void atMost(Standing limit, String why) {
    standing = standing.atMost(limit);
    lines.add(why);
  }

  /** What the readings themselves say. */
  void onReadings(Prepared green) {
    int n = green.observations().size();
    if (n >= settings.needed().map() && n < settings.needed().full()) {
      atMost(Standing.INDICATIVE, n + " readings: indicative, no patches are outlined");
    }
    int controls = green.stations().controls().size();
    if (controls > 0) {
      lines.add(counted(controls, "reading") + " of control stations not mapped");
    }
    if (green.merged() > 0) {
      boolean averaged = settings.duplicates() != DuplicatePolicy.KEEP_FIRST;
      lines.add(
          counted(green.merged(), "station")
              + " at the place of another "
              + (averaged ? "averaged with it" : "left out"));
    }
    double area = green.subject().green().areaM2();
    double most = COARSEST * Math.sqrt(area);
    if (settings.cellM() > most) {
      lines.add(
          String.format(
              Locale.ROOT,
              "cells of %s m are coarse for %.0f m²: %.2g m or less shows the green's shape",
              settings.cellM(),
              area,
              most));
    }
  }

  /** What the variogram can carry. */
  void onVariogram(Prepared green, PooledVariogram variogram) {
    if (variogram.evidence().borrowed()) {
      lines.add("borrowed variogram: too few stations in the pool for one of its own");
    }
    if (!(variogram.evidence().gain() > 0)) {
      atMost(
          Standing.PROBABILITIES,
          "the readings show no spatial structure: the map hardly differs from the green's mean");
    }
    double blurred = blurred(green, variogram.model(green.subject().surveyId()));
    if (blurred > MOST_BLURRED) {
      atMost(
          Standing.PROBABILITIES,
          String.format(
              Locale.ROOT,
              "the positions are too uncertain to outline patches: %.0f %% of the pattern is lost"
                  + " in them",
              100 * blurred));
    }
  }

  /** Share of the structure that the jitter of two readings turns into nugget. */
  private static double blurred(Prepared green, NestedModel model) {
    double jitter = green.meanJitterM();
    var structure = model.structures().get(0).model();
    return jitter == 0
        ? 0
        : BlurredModel.of(structure, Math.sqrt(2) * jitter).semivariance(0)
            / structure.partialSill();
  }

  /** What the finding on two populations asks for. */
  void onPopulation(Optional<GreenPopulation> population) {
    population
        .filter(p -> p.found().isPresent())
        .ifPresent(
            p -> {
              lines.add("two populations of readings, mapped apart: " + p.finding().seen());
              lines.add(p.finding().why());
              p.finding().next().forEach(lines::add);
            });
  }

  static String counted(long count, String noun) {
    String ending = count == 1 ? "" : noun.endsWith("ch") ? "es" : "s";
    return count + " " + noun + ending;
  }
}
