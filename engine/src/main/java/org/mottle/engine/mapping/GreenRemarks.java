package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.special.Erf;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.patch.ClassRule;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.population.Finding;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.VariogramModel;

/** What a reader of a map should know, and how far the map can be trusted for it. */
final class GreenRemarks {
  /** Cells wider than this share of the root of the area do not draw a green. */
  private static final double COARSEST = 0.2;

  /** Position errors that blur away more than this share of the structure leave no outline. */
  private static final double MOST_BLURRED = 0.5;

  /** With more of the green than this in no class, the band is finer than the readings tell. */
  private static final double MOST_UNTOLD = 0.5;

  /** Less of the green than this that cannot be placed is not worth a line. */
  private static final double LEAST_EXPECTED = 0.05;

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
  void onVariogram(Prepared green, PooledVariogram variogram, Slope slope) {
    if (variogram.evidence().borrowed()) {
      lines.add("borrowed variogram: too few stations in the pool for one of its own");
    }
    if (!variogram.evidence().borrowed() && !(variogram.evidence().gain() > 0)) {
      atMost(
          Standing.PROBABILITIES,
          "the readings show no spatial structure: the map hardly differs from the green's "
              + (slope.drift().usesCoordinates() ? "slope" : "mean"));
    }
    if (slope.found()) {
      lines.add("moisture slopes across the green: a plane is mapped beneath the pattern");
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
    VariogramModel structure = model.structures().get(0).model();
    return jitter == 0
        ? 0
        : BlurredModel.of(structure, Math.sqrt(2) * jitter).semivariance(0)
            / structure.partialSill();
  }

  /**
   * What the finding on two populations asks for.
   *
   * @param main values of the main population
   */
  void onPopulation(Finding finding, int main) {
    lines.add("two populations of readings, mapped apart: " + finding.seen());
    lines.add(finding.why());
    lines.addAll(finding.next());
    lines.addAll(finding.cautions());
    lines.add("areas and patches of dry ground are those of the main population alone");
    if (main < settings.needed().full()) {
      atMost(
          Standing.INDICATIVE,
          counted(main, "reading")
              + " of the main population: indicative, no patches are outlined");
    }
  }

  /** Stations chosen for what was seen there that the surface does not go through. */
  void onChosen(Prepared green, Prepared main) {
    Set<Integer> kept = Arrays.stream(main.members()).boxed().collect(Collectors.toSet());
    boolean[] chosen = green.chosen();
    int left = 0;
    for (int i = 0; i < chosen.length; i++) {
      left += chosen[i] && !kept.contains(green.members()[i]) ? 1 : 0;
    }
    if (left > 0) {
      lines.add(
          counted(left, "station")
              + " chosen for what was seen there: the surface, which they would bias, does not go"
              + " through; seen dry or wet they stand as spots");
    }
  }

  /** Ground that is there but cannot be placed. */
  void onExpected(ExpectedGround expected, double greenM2) {
    if (!expected.placeKnown() && expected.areaM2() >= LEAST_EXPECTED * greenM2) {
      lines.add(
          String.format(
              Locale.ROOT,
              "about %.0f m² %s ground is to be expected, but its place is not known",
              expected.areaM2(),
              expected.kind().code()));
    }
  }

  /**
   * What is said of a band so narrow that ground in the middle of it is not likely to be in it.
   *
   * @param sd of the map, % by volume
   */
  void onBand(TargetBand band, double sd) {
    double width = band.highPct() - band.lowPct();
    double most = Erf.erf(width / (2 * Math.sqrt(2) * sd));
    if (most < ClassRule.defaults().inBand()) {
      atMost(
          Standing.PROBABILITIES,
          String.format(
              Locale.ROOT,
              "the readings do not resolve a band of %.2g %%: with a standard deviation of %.2g %%"
                  + " hardly any ground can be called in band",
              width,
              sd));
    }
  }

  /** What is said where most of the ground is in no class. */
  void onZones(List<Zone> zones, double areaM2) {
    double untold =
        zones.stream()
            .filter(z -> z.cls() == ZoneClass.CANNOT_TELL)
            .mapToDouble(Zone::areaM2)
            .sum();
    if (untold > MOST_UNTOLD * areaM2) {
      atMost(
          Standing.PROBABILITIES,
          String.format(
              Locale.ROOT,
              "%.0f %% of the green cannot be told: the readings do not resolve the band",
              100 * untold / areaM2));
    }
  }

  private static String counted(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }
}
