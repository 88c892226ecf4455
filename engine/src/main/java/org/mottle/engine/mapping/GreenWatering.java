package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.Deficit;
import org.mottle.engine.water.WaterMeter;
import org.mottle.engine.water.Watering;
import org.mottle.engine.water.WateringSettings;

/** The water that a kriged green wants: a second pass over the realisations, patches known. */
final class GreenWatering {
  private GreenWatering() {}

  /** Of a map that does not say how sure it is. */
  static Watering unsure() {
    return new Watering.NotWorkedOut(
        new Refusal(
            "water is not worked out without a standard deviation of the map", "map by kriging"));
  }

  static Watering of(
      Prepared prepared,
      MappingSettings settings,
      KrigedGreen kriged,
      List<Patch> patches,
      int threads,
      Progress progress) {
    Green green = prepared.subject().green();
    WateringSettings watering = settings.watering();
    double root = green.rootZone().rootDepthMm();
    double rootMm = Double.isNaN(root) ? watering.rootMm() : root;
    Optional<TargetBand> band = prepared.subject().band();
    if (band.isEmpty()) {
      return new Watering.NotWorkedOut(
          new Refusal(
              "no litres: water is worked out to a target in the band, and there is none",
              "the site's agronomist sets bands in the settings"));
    }
    if (Double.isNaN(rootMm)) {
      return new Watering.NotWorkedOut(
          new Refusal(
              "no litres: they are what is lacking times the depth of the roots, which is not known",
              "give root_mm in the outlines' file, or under water in the settings"));
    }
    Deficit deficit = Deficit.of(green.rootZone(), rootMm, band.get(), watering);
    int n = kriged.realisations();
    List<WaterMeter> meters = new ArrayList<>();
    meters.add(
        WaterMeter.below(
            band.get().lowPct(),
            CoveredGround.of(kriged.cells(), green.outline()),
            deficit,
            watering.efficiency(),
            n));
    List<Patch> dry = patches.stream().filter(p -> p.kind() == ZoneClass.DRY).toList();
    dry.stream()
        .map(Patch::geometry)
        .map((Geometry g) -> CoveredGround.of(kriged.cells(), g))
        .map(g -> WaterMeter.of(g, deficit, watering.efficiency(), n))
        .forEach(meters::add);
    kriged.forEach((r, values) -> meters.forEach(m -> m.take(r, values)), threads, progress);
    List<Watering.PatchWater> wanted = new ArrayList<>();
    for (int i = 0; i < dry.size(); i++) {
      wanted.add(new Watering.PatchWater(dry.get(i).number(), meters.get(i + 1).wanted()));
    }
    return new Watering.Wanted(deficit, watering.efficiency(), meters.get(0).wanted(), wanted);
  }
}
