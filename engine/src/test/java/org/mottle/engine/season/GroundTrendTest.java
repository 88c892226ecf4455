package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

/** Eight greens whose ground waves by some decimetres, read on a grid. */
class GroundTrendTest {
  private static final MappingSettings QUICK =
      MappingSettings.defaults().withUncertainty(new UncertaintySettings(20, 6, 0, 0, 0));
  private static final int GREENS = 8;

  private final Map<String, Raster> heights = new HashMap<>();

  private static double height(int g, double x, double y) {
    return 40 + 0.25 * Math.sin(0.31 * x + g) * Math.cos(0.27 * y - g);
  }

  private SurveyMap map(double pctPerM, int surveys) {
    List<GreenSurvey> all = new ArrayList<>();
    for (int s = 0; s < surveys; s++) {
      for (int g = 0; g < GREENS; g++) {
        all.add(green(g, "S" + s, pctPerM));
      }
    }
    return new SurveyMapper(QUICK).map(all, 2, Progress.NONE);
  }

  private GreenSurvey green(int g, String survey, double pctPerM) {
    double cx = 1000 * g;
    Green green =
        Green.of("G" + g, new GeometryFactory().createPoint(new Coordinate(cx, 0)).buffer(12.5));
    CellGrid grid = new CellGrid(cx - 15, 15, 0.5, 60, 60);
    double[] z = new double[grid.size()];
    for (int i = 0; i < z.length; i++) {
      z[i] = height(g, grid.x(i % 60) - cx, grid.y(i / 60));
    }
    heights.put("G" + g, new Raster(grid, z));
    // the same pattern in every survey, as greens have: the same seed
    Well19937c noise = new Well19937c(900 + g);
    SplittableRandom place = new SplittableRandom(g);
    List<Reading> readings = new ArrayList<>();
    for (double y = -10; y <= 10; y += 4) {
      for (double x = -10; x <= 10; x += 4) {
        double east = x + place.nextDouble(-1, 1);
        double north = y + place.nextDouble(-1, 1);
        if (Math.hypot(east, north) < 12) {
          double pct =
              20
                  + pctPerM * (height(g, east, north) - 40)
                  + 0.8 * noise.nextGaussian()
                  + 1.2 * Math.sin(0.4 * east + 0.2 * north + 2 * g);
          readings.add(
              new Reading(
                  new Reading.Label("G" + g, survey, "" + readings.size(), 0, 1, 0),
                  new Reading.Position(cx + east, north, Double.NaN, "", Double.NaN),
                  Reading.Moisture.raw(pct),
                  Reading.Protocol.UNKNOWN,
                  Reading.Role.PLAN,
                  Reading.Quality.NOT_REVIEWED));
        }
      }
    }
    return new GreenSurvey(green, survey, readings, Optional.empty());
  }

  private GroundTrend trend(double pctPerM, int surveys) {
    SurveyMap map = map(pctPerM, surveys);
    return GroundTrend.of(map.maps(), heights, map.settings());
  }

  @Test
  void aTrendThatIsThereIsFoundAndAskedFor() {
    GroundTrend found = trend(-6, 1);
    assertThat(found.coefficient()).isCloseTo(-6, within(3 * found.standardError()));
    assertThat(found.asked()).as(found.words()).isTrue();
    assertThat(found.greens()).isEqualTo(GREENS);
  }

  @Test
  void whereThereIsNoneItIsNotAskedFor() {
    GroundTrend found = trend(0, 1);
    assertThat(found.coefficient()).isCloseTo(0, within(3 * found.standardError()));
    assertThat(found.asked()).as(found.words()).isFalse();
  }

  /** A pattern that is read three times is known no better. */
  @Test
  void surveysThatRepeatAPatternCountAsOne() {
    GroundTrend one = trend(-6, 1);
    GroundTrend three = trend(-6, 3);
    assertThat(three.standardError()).isGreaterThan(0.8 * one.standardError());
    assertThat(three.stations()).isEqualTo(one.stations());
  }

  @Test
  void withoutHeightsNothingIsSaid() {
    heights.clear();
    SurveyMap map = map(-6, 1);
    GroundTrend found = GroundTrend.of(map.maps(), Map.of(), map.settings());
    assertThat(found.asked()).isFalse();
    assertThat(found.words()).contains("not known");
  }
}
