package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.population.Finding;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

/** A green with scattered stations that read far below the others, and its neighbours without. */
class PopulationMapTest {
  /** Stations of the first green, by their order in the file, that read 9 % low. */
  private static final Set<Integer> LOW = Set.of(3, 10, 16, 23, 29, 36, 42);

  private static List<GreenSurvey> sound;
  private static Outcome.Mapped spotted;
  private static Outcome.Mapped without;
  private static Outcome.Mapped ordinary;

  @BeforeAll
  static void mapBoth() {
    sound = new ArrayList<>();
    for (int g = 0; g < 3; g++) {
      double cx = 500_000 + 100.0 * g;
      Green green = InventedSurvey.green("G" + (g + 1), cx, 5_316_300, 61 + g);
      sound.add(
          InventedSurvey.survey(
              green,
              InventedSurvey.planned(
                  green, 3.3, (x, y) -> place(x - cx, y - 5_316_300), 0.5, 61 + g)));
    }
    List<GreenSurvey> course = new ArrayList<>(sound);
    GreenSurvey first = sound.get(0);
    List<Reading> readings = new ArrayList<>(first.readings());
    LOW.forEach(
        i -> readings.set(i, InventedSurvey.reading(readings.get(i), readings.get(i).pct() - 9)));
    course.set(0, InventedSurvey.survey(first.green(), readings));
    SurveyMapper mapper = new SurveyMapper(InventedSurvey.QUICK);
    List<Outcome.Mapped> maps = mapper.map(course, 2, Progress.NONE).maps();
    spotted = maps.get(0);
    ordinary = maps.get(1);
    List<Reading> others = new ArrayList<>();
    for (int i = 0; i < first.readings().size(); i++) {
      if (!LOW.contains(i)) {
        others.add(first.readings().get(i));
      }
    }
    course.set(0, InventedSurvey.survey(first.green(), others));
    without = mapper.map(course, 2, Progress.NONE).maps().get(0);
  }

  /** A wet place on even ground. */
  private static double place(double x, double y) {
    return 20 + 4 * Math.exp(-((x - 4) * (x - 4) + (y - 2) * (y - 2)) / 40);
  }

  /** What a test of the readings gets is what the map rests on. */
  @Test
  void valuesBehindTheMapAreThoseOfTheMainPopulation() {
    GreenReadings behind = GreenReadings.of(spotted, InventedSurvey.QUICK);
    GreenReadings whole = GreenReadings.of(without, InventedSurvey.QUICK);
    assertThat(behind.observations().values()).containsExactly(whole.observations().values());
    assertThat(behind.insertions()).hasSize(behind.observations().size()).containsOnly(1);
    assertThat(behind.observations().commonErrors()).isEmpty();
    GreenReadings byHand =
        GreenReadings.of(
            spotted,
            InventedSurvey.QUICK.withUncertainty(
                InventedSurvey.QUICK.uncertainty().withOperatorSdPct(0.7)));
    assertThat(byHand.observations().commonErrors()).hasSize(1);
  }

  private static Reading low(int i) {
    return sound.get(0).readings().get(i);
  }

  private static double at(Raster raster, Reading place) {
    CellGrid grid = raster.grid();
    int column = (int) ((place.x() - grid.west()) / grid.cell());
    int row = (int) ((grid.north() - place.y()) / grid.cell());
    return raster.value(grid.index(row, column));
  }

  @Test
  void itIsMappedApartAndSaysSo() {
    Outcome.KrigingBasis basis = spotted.basis().kriging().orElseThrow();
    assertThat(basis.populations().orElseThrow().advice())
        .isEqualTo(Finding.Advice.MAP_APART_AND_TEST);
    assertThat(basis.low())
        .hasSize(LOW.size())
        .allSatisfy(
            low -> {
              assertThat(low.membership()).isGreaterThan(0.9);
              Reading r = spotted.stations().stations().get(low.station()).insertions().get(0);
              assertThat(LOW).contains(Integer.parseInt(r.label().stationId()) - 1);
            });
    assertThat(spotted.remarks())
        .anyMatch(r -> r.startsWith("two populations of readings, mapped apart: "))
        .contains("areas and patches of dry ground are those of the main population alone");
  }

  @Test
  void lowGroundIsLikelyAtLowStationsAndDryThere() {
    Surface.Chances chances = spotted.surface().chances().orElseThrow();
    Raster low = chances.low().orElseThrow();
    double others = 0;
    int count = 0;
    for (int i = 0; i < sound.get(0).readings().size(); i++) {
      double p = at(low, low(i));
      if (LOW.contains(i)) {
        assertThat(p).as("station %d", i + 1).isGreaterThan(0.6);
        assertThat(at(chances.dry(), low(i))).as("station %d", i + 1).isGreaterThan(0.6);
      } else {
        others += p;
        count++;
      }
    }
    assertThat(others / count).isLessThan(0.25);
  }

  @Test
  void bothPopulationsTogetherAreStillProbabilities() {
    Surface.Chances chances = spotted.surface().chances().orElseThrow();
    for (int i = 0; i < chances.dry().grid().size(); i++) {
      if (chances.dry().has(i)) {
        assertThat(chances.dry().value(i)).isBetween(0.0, 1.0);
        assertThat(chances.wet().value(i)).isBetween(0.0, 1.0);
        assertThat(chances.dry().value(i) + chances.wet().value(i)).isLessThan(1 + 1e-12);
      }
    }
  }

  @Test
  void theSurfaceAndPatchesAreThoseOfTheMainPopulation() {
    // as if the low stations had not been read: neither variogram nor kriging sees them
    assertThat(spotted.surface().mean().values())
        .containsExactly(without.surface().mean().values());
    assertThat(spotted.surface().sd().values()).containsExactly(without.surface().sd().values());
    assertThat(spotted.parts().patches()).isNotEmpty();
    assertThat(spotted.parts().patches()).hasSameSizeAs(without.parts().patches());
    for (Patch patch : spotted.parts().patches()) {
      long readings =
          sound.get(0).readings().stream()
              .filter(r -> !LOW.contains(Integer.parseInt(r.label().stationId()) - 1))
              .filter(
                  r ->
                      patch
                          .geometry()
                          .intersects(
                              patch
                                  .geometry()
                                  .getFactory()
                                  .createPoint(new Coordinate(r.x(), r.y()))))
              .count();
      assertThat((long) patch.readings()).isEqualTo(readings);
    }
  }

  @Test
  void realisationsOfTheMainPopulationTellNoAreaOfBoth() {
    for (Zone zone : spotted.parts().zones()) {
      assertThat(zone.areaLow()).isNaN();
    }
    assertThat(spotted.parts().zones())
        .filteredOn(z -> z.cls() != ZoneClass.CANNOT_TELL)
        .allSatisfy(z -> assertThat(z.probability()).isBetween(0.4, 1.0));
  }

  @Test
  void anOrdinaryGreenIsNotMappedApart() {
    assertThat(ordinary.basis().kriging().orElseThrow().low()).isEmpty();
    assertThat(ordinary.surface().chances().orElseThrow().low()).isEmpty();
    assertThat(ordinary.remarks()).noneMatch(r -> r.contains("two populations"));
  }
}
