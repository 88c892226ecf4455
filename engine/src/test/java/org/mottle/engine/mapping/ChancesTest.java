package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.patch.ClassRule;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.variogram.NestedModel;

/** Probabilities, classes, patches and areas of one map speak of the same thing. */
class ChancesTest {
  private static final MappingSettings SETTINGS =
      MappingSettings.defaults().withUncertainty(new UncertaintySettings(400, 20, 0, 0, 0));
  private static SurveyMap map;

  @BeforeAll
  static void mapCourse() {
    List<GreenSurvey> course = new ArrayList<>(InventedSurvey.plannedCourse(4, 0.8, 23));
    GreenSurvey last = course.get(3);
    course.set(
        3,
        new GreenSurvey(
            last.green(), "S1", last.readings(), Optional.of(TargetBand.of(19.5, 24.5))));
    map = new SurveyMapper(SETTINGS).map(course, 2, Progress.NONE);
    assertThat(map.maps()).hasSize(4);
  }

  private static Surface.Chances chances(Outcome.Mapped green) {
    return green.surface().chances().orElseThrow();
  }

  @Test
  void dryAndWetExcludeEachOther() {
    for (Outcome.Mapped green : map.maps()) {
      Raster dry = chances(green).dry();
      Raster wet = chances(green).wet();
      for (int i = 0; i < dry.grid().size(); i++) {
        if (dry.has(i)) {
          assertThat(dry.value(i)).isBetween(0.0, 1.0);
          assertThat(wet.value(i)).isBetween(0.0, 1.0);
          assertThat(dry.value(i) + wet.value(i)).isLessThanOrEqualTo(1 + 1e-12);
        }
        assertThat(dry.has(i)).isEqualTo(green.surface().mean().has(i)).isEqualTo(wet.has(i));
      }
    }
  }

  @Test
  void theClassAtACentreIsThatOfItsProbabilities() {
    for (Outcome.Mapped green : map.maps()) {
      ClassRule rule = ClassRule.defaults().withSdLimit(0.9 * structuredSd(green));
      CellGrid grid = green.surface().mean().grid();
      List<IndexedPointInAreaLocator> locators =
          green.parts().zones().stream()
              .map(z -> new IndexedPointInAreaLocator(z.geometry()))
              .toList();
      int told = 0;
      int differ = 0;
      for (int i = 0; i < grid.size(); i++) {
        if (green.surface().mean().has(i)) {
          ZoneClass wanted =
              rule.of(
                  chances(green).dry().value(i),
                  chances(green).wet().value(i),
                  green.surface().sd().value(i));
          Coordinate centre =
              new Coordinate(grid.x(i % grid.columns()), grid.y(i / grid.columns()));
          for (int z = 0; z < locators.size(); z++) {
            if (locators.get(z).locate(centre) == Location.INTERIOR) {
              told++;
              differ += green.parts().zones().get(z).cls() == wanted ? 0 : 1;
            }
          }
        }
      }
      assertThat(told).isGreaterThan(1900);
      // parts below a cell are given to a neighbour
      assertThat(differ).as(green.subject().label()).isLessThan(told / 100);
    }
  }

  private static double structuredSd(Outcome.Mapped green) {
    List<NestedModel> models =
        green
            .basis()
            .variogram()
            .orElseThrow()
            .pooled()
            .orElseThrow()
            .draws(Prepared.of(green.subject(), SETTINGS).sample());
    return Math.sqrt(
        models.stream().mapToDouble(m -> m.sill() - m.nugget()).average().orElseThrow());
  }

  @Test
  void theExpectedAreaIsTheIntegralOfTheProbability() {
    for (Outcome.Mapped green : map.maps()) {
      for (ExpectedGround expected : green.parts().marks().orElseThrow().expected()) {
        Raster p = expected.kind() == ZoneClass.DRY ? chances(green).dry() : chances(green).wet();
        double cell = p.grid().cell();
        double sum = 0;
        for (int i = 0; i < p.grid().size(); i++) {
          sum += p.has(i) ? p.value(i) * cell * cell : 0;
        }
        // centres inside stand for their cells, cut or not
        assertThat(expected.areaM2())
            .as("%s %s", green.subject().label(), expected.kind())
            .isCloseTo(sum, within(0.5 + 0.01 * sum))
            .isBetween(expected.areaLow(), expected.areaHigh());
      }
    }
  }

  @Test
  void aPatchIsGroundExpectedThere() {
    int patches = 0;
    for (Outcome.Mapped green : map.maps()) {
      for (Patch patch : green.parts().patches()) {
        Patch.Likelihood likelihood = patch.likelihood().orElseThrow();
        assertThat(likelihood.pExist()).isGreaterThanOrEqualTo(0.5);
        assertThat(patch.readings()).isPositive();
        assertThat(likelihood.areaExpected())
            .isBetween(likelihood.areaLow(), likelihood.areaHigh());
        assertThat(likelihood.bounds().envelope().buffer(1e-6).covers(patch.geometry())).isTrue();
        assertThat(patch.geometry().buffer(1e-6).covers(likelihood.bounds().core())).isTrue();
        assertThat(patch.areaM2())
            .isGreaterThan(green.parts().marks().orElseThrow().smallest().areaM2());
        patches++;
      }
    }
    assertThat(patches).isPositive();
  }

  @Test
  void probabilitiesOfZonesAreThoseOfTheirClass() {
    for (Outcome.Mapped green : map.maps()) {
      for (Zone zone : green.parts().zones()) {
        switch (zone.cls()) {
          case DRY, WET -> assertThat(zone.probability()).isGreaterThan(0.79);
          case PROBABLY_DRY, PROBABLY_WET -> assertThat(zone.probability()).isBetween(0.5, 0.81);
          case IN_BAND -> assertThat(zone.probability()).isGreaterThan(0.44);
          default -> assertThat(zone.probability()).isNaN();
        }
      }
    }
  }
}
