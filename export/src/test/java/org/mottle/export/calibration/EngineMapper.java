package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;

/**
 * The maps of the engine, with the settings a user gets. Where it refuses one, the borrowed
 * variogram stands in, as for the other methods.
 */
record EngineMapper() implements Method {

  @Override
  public String name() {
    return "Mottle";
  }

  @Override
  public Mapping map(List<GreenCase> course) {
    MappingSettings defaults = MappingSettings.defaults();
    MappingSettings settings =
        defaults
            .withCellM(course.get(0).cells().grid().cell())
            .withUncertainty(defaults.uncertainty().withNextStations(0));
    SurveyMap map =
        new SurveyMapper(settings)
            .map(course.stream().map(GreenCase::subject).toList(), 1, Progress.NONE);
    List<MappedGreen> greens = new ArrayList<>();
    for (int i = 0; i < course.size(); i++) {
      greens.add(
          map.outcomes().get(i) instanceof Outcome.Mapped mapped
              ? green(course.get(i), mapped)
              : FittedVariogram.borrowed(course.get(i)));
    }
    return new Mapping(
        greens, map.variograms().stream().flatMap(v -> claim(v, course).stream()).toList());
  }

  private static MappedGreen green(GreenCase green, Outcome.Mapped mapped) {
    int[] index = green.cells().index();
    double[] mean = at(index, mapped.surface().mean().values());
    double[] sd = at(index, mapped.surface().sd().values());
    double[] dry = at(index, mapped.surface().chances().orElseThrow().dry().values());
    double[] wet = at(index, mapped.surface().chances().orElseThrow().wet().values());
    MappedGreen plain = MappedGreen.of(green, CellDistribution.normal(mean, sd));
    return new MappedGreen(
        green,
        plain.cells(),
        plain.mean(),
        plain.fifty(),
        plain.ninety(),
        new MappedGreen.Exceedance(dry, area(mapped, ZoneClass.DRY)),
        new MappedGreen.Exceedance(wet, area(mapped, ZoneClass.WET)),
        mapped.parts().patches().stream().map(EngineMapper::claim).toList());
  }

  private static PatchClaim claim(Patch patch) {
    return new PatchClaim(
        patch.kind() == ZoneClass.WET, patch.geometry(), patch.likelihood().orElseThrow().pExist());
  }

  private static AreaClaim area(Outcome.Mapped mapped, ZoneClass kind) {
    ExpectedGround ground =
        mapped.parts().marks().orElseThrow().expected().stream()
            .filter(e -> e.kind() == kind)
            .findFirst()
            .orElseThrow();
    return new AreaClaim(
        ground.areaM2(), Optional.of(new Span(ground.areaLow(), ground.areaHigh())));
  }

  private static double[] at(int[] index, double[] values) {
    return Arrays.stream(index).mapToDouble(i -> values[i]).toArray();
  }

  private static Optional<VariogramClaim> claim(MapVariogram found, List<GreenCase> course) {
    return found
        .pooled()
        .map(
            p ->
                new VariogramClaim(
                    course.stream()
                        .filter(c -> found.greens().contains(c.subject().green().id()))
                        .findFirst()
                        .orElseThrow()
                        .known()
                        .pool(),
                    p.parameters().practicalRange().best(),
                    p.parameters().nugget().best(),
                    Optional.of(span(p.parameters().practicalRange())),
                    Optional.of(span(p.parameters().nugget()))));
  }

  private static Span span(Interval interval) {
    return new Span(interval.low(), interval.high());
  }
}
