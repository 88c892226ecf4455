package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Surface;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.patch.Ground;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Grade;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.survey.WaterHistory;

/**
 * One green whose probabilities are invented survey by survey; quantiles by scipy 1.x stats.beta.
 */
class PersistenceTest {
  private static final double NONE = Double.NaN;
  private static final TargetBand BAND = new TargetBand("ball roll", 16, 22, "agronomist", "");
  private static final Grade.Letter A = Grade.Letter.A;
  private static final Grade.Letter B = Grade.Letter.B;

  /** Wet within 5 m of (2, 1). */
  private static final DoubleBinaryOperator WET =
      (x, y) -> Math.hypot(x - 2, y - 1) < 5 ? 0.9 : 0.05;

  private static final DoubleBinaryOperator SOUND = (x, y) -> 0.05;
  private static final Outcome.Mapped MAP = map(12.5);

  private static Outcome.Mapped map(double radius) {
    Geometry outline = new GeometryFactory().createPoint(new Coordinate(0, 0)).buffer(radius, 16);
    SplittableRandom random = new SplittableRandom(5);
    List<Reading> readings = new ArrayList<>();
    for (double y = -10; y <= 10; y += 2.5) {
      for (double x = -10; x <= 10; x += 2.5) {
        if (Math.hypot(x, y) < 12) {
          readings.add(reading(readings.size() + 1, x, y, 19 + random.nextDouble(-2, 2), 60));
        }
      }
    }
    GreenSurvey green = new GreenSurvey(Green.of("G", outline), "S1", readings, Optional.of(BAND));
    MappingSettings quick =
        MappingSettings.defaults().withUncertainty(new UncertaintySettings(60, 6, 0, 0, 0));
    return (Outcome.Mapped)
        new SurveyMapper(quick).map(List.of(green), 1, Progress.NONE).outcomes().get(0);
  }

  private static Reading reading(int station, double x, double y, double pct, double rodMm) {
    return new Reading(
        new Reading.Label("G", "S1", "" + station, station, 1, station + 1),
        new Reading.Position(x, y, NONE, "", NONE),
        Reading.Moisture.raw(pct),
        new Reading.Protocol("", rodMm, "P", "A", "", NONE, NONE),
        Reading.Role.PLAN,
        Reading.Quality.NOT_REVIEWED);
  }

  private static Raster raster(DoubleBinaryOperator chance, Raster like) {
    CellGrid grid = like.grid();
    double[] values = new double[grid.size()];
    for (int row = 0; row < grid.rows(); row++) {
      for (int column = 0; column < grid.columns(); column++) {
        int at = grid.index(row, column);
        values[at] = like.has(at) ? chance.applyAsDouble(grid.x(column), grid.y(row)) : NONE;
      }
    }
    return new Raster(grid, values);
  }

  /** The template with other probabilities, rods and name. */
  private static Outcome.Mapped map(
      Outcome.Mapped from, String survey, DoubleBinaryOperator wet, double rodMm) {
    Surface s = from.surface();
    Surface.Chances chances =
        new Surface.Chances(
            raster(wet, s.mean()),
            raster(wet, s.mean()),
            Optional.empty(),
            s.chances().orElseThrow().classes());
    List<Reading> readings =
        from.subject().readings().stream()
            .map(r -> reading(r.label().sequence(), r.x(), r.y(), r.pct(), rodMm))
            .toList();
    return new Outcome.Mapped(
        new GreenSurvey(from.subject().green(), survey, readings, Optional.of(BAND)),
        from.stations(),
        from.summary(),
        from.remarks(),
        from.standing(),
        from.basis(),
        new Surface(
            s.cells(),
            s.interpolable(),
            s.mean(),
            s.sd(),
            s.medianSd(),
            s.conditionEstimate(),
            Optional.of(chances)),
        from.parts(),
        from.evenness(),
        from.watering());
  }

  private static SurveyedMap rain(String survey, DoubleBinaryOperator wet, Grade.Letter grade) {
    return new SurveyedMap(
        map(MAP, survey, wet, 60), WaterHistory.AFTER_RAIN, Optional.ofNullable(grade));
  }

  private static Persistence found(SurveyedMap... maps) {
    return (Persistence) Persistence.of(List.of(maps), PersistenceSettings.drainage());
  }

  private static PersistenceOutcome.Refused refused(SurveyedMap... maps) {
    return (PersistenceOutcome.Refused)
        Persistence.of(List.of(maps), PersistenceSettings.drainage());
  }

  private static double at(Raster raster, double x, double y) {
    CellGrid g = raster.grid();
    return raster.value((int) ((g.north() - y) / g.cell()), (int) ((x - g.west()) / g.cell()));
  }

  @Test
  void what_is_wet_in_every_survey_is_a_sure_place() {
    Persistence p =
        found(rain("S1", WET, A), rain("S2", WET, A), rain("S3", WET, A), rain("S4", WET, A));
    assertThat(at(p.count(), 2, 1)).isEqualTo(4);
    assertThat(at(p.wet().share(), 2, 1)).isEqualTo(1);
    assertThat(at(p.wet().low(), 2, 1)).isCloseTo(0.6375131872, within(1e-8));
    assertThat(at(p.wet().high(), 2, 1)).isEqualTo(1);
    assertThat(at(p.wet().share(), -8, -5)).isZero();
    assertThat(at(p.wet().low(), -8, -5)).isZero();
    assertThat(p.wet().surePlaces()).hasSize(1);
    PersistentPlace place = p.wet().surePlaces().get(0);
    assertThat(place.areaM2()).isCloseTo(25 * Math.PI, within(6.0));
    assertThat(place.sureM2()).isBetween(0.9 * place.areaM2(), place.areaM2());
    assertThat(place.share()).isCloseTo(1, within(0.05));
    assertThat(place.outline().isValid()).isTrue();
  }

  @Test
  void two_surveys_make_it_likely_not_sure() {
    Persistence p = found(rain("S1", WET, A), rain("S2", WET, A));
    assertThat(p.wet().surePlaces()).isEmpty();
    assertThat(p.wet().places()).hasSize(1);
    assertThat(at(p.wet().low(), 2, 1)).isCloseTo(0.4307414681, within(1e-8));
    assertThat(p.remarks()).anyMatch(r -> r.startsWith("2 surveys"));
  }

  @Test
  void grades_weigh() {
    Persistence p = found(rain("S1", WET, A), rain("S2", WET, B), rain("S3", SOUND, B));
    assertThat(at(p.wet().share(), 2, 1)).isCloseTo(1.75 / 2.5, within(1e-12));
    assertThat(at(p.wet().low(), 2, 1))
        .isCloseTo(new SurveyShare(1.75, 2.5).interval().low(), within(1e-12));
    assertThat(p.surveys()).extracting(Persistence.Counted::weight).containsExactly(1.0, .75, .75);
    // scipy: beta.ppf((0.05, 0.95), 2.25, 1.25), beta.sf(0.5, 2.25, 1.25)
    Interval i = new SurveyShare(1.75, 2.5).interval();
    assertThat(i.low()).isCloseTo(0.22909299, within(1e-7));
    assertThat(i.high()).isCloseTo(0.95641656, within(1e-7));
    assertThat(new SurveyShare(1.75, 2.5).chanceOfMoreThanHalf())
        .isCloseTo(0.7288279291, within(1e-8));
  }

  @Test
  void a_survey_of_grade_d_or_of_other_water_changes_nothing() {
    Persistence before = found(rain("S1", WET, A), rain("S2", SOUND, A));
    Persistence after =
        found(
            rain("S1", WET, A),
            rain("S2", SOUND, A),
            rain("S3", WET, Grade.Letter.D),
            new SurveyedMap(map(MAP, "S4", WET, 60), WaterHistory.DRYING, Optional.of(A)));
    assertThat(after.wet().share().values()).isEqualTo(before.wet().share().values());
    assertThat(after.wet().high().values()).isEqualTo(before.wet().high().values());
    assertThat(after.leftOut())
        .extracting(PersistenceOutcome.LeftOut::toString)
        .containsExactly("S3: grade D, which counts for nothing", "S4: dry days, not after rain");
  }

  @Test
  void order_does_not_matter_and_intervals_hold_the_share() {
    SplittableRandom random = new SplittableRandom(3);
    List<SurveyedMap> maps = new ArrayList<>();
    for (int s = 0; s < 5; s++) {
      maps.add(rain("S" + s, (x, y) -> random.nextDouble(), s % 2 == 0 ? A : null));
    }
    Persistence one = (Persistence) Persistence.of(maps, PersistenceSettings.drainage());
    Collections.reverse(maps);
    Persistence other = (Persistence) Persistence.of(maps, PersistenceSettings.drainage());
    assertThat(other.wet().share().values()).isEqualTo(one.wet().share().values());
    for (int i = 0; i < one.count().grid().size(); i++) {
      if (one.count().has(i)) {
        assertThat(one.wet().share().value(i))
            .isBetween(one.wet().low().value(i), one.wet().high().value(i));
      }
    }
  }

  @Test
  void places_are_valid_apart_and_inside_whatever_the_surveys_say() {
    SplittableRandom random = new SplittableRandom(9);
    Geometry green = MAP.subject().green().outline().buffer(1e-6);
    for (int trial = 0; trial < 5; trial++) {
      List<SurveyedMap> maps = new ArrayList<>();
      for (int s = 0; s < 4; s++) {
        double k = random.nextDouble(0.3, 1);
        double phase = random.nextDouble(0, 6);
        maps.add(
            rain("S" + s, (x, y) -> 0.5 + 0.4 * Math.sin(k * x + phase) * Math.cos(0.5 * y), A));
      }
      Persistence p = (Persistence) Persistence.of(maps, PersistenceSettings.drainage());
      List<PersistentPlace> places = p.wet().places();
      for (int i = 0; i < places.size(); i++) {
        PersistentPlace place = places.get(i);
        assertThat(place.outline().isValid()).isTrue();
        assertThat(green.covers(place.outline())).isTrue();
        assertThat(place.sureM2()).isBetween(0.0, place.areaM2() + 1e-6);
        for (int j = 0; j < i; j++) {
          double shared = place.outline().intersection(places.get(j).outline()).getArea();
          assertThat(shared).isLessThan(1e-6);
        }
      }
      assertThat(places).as("trial %d", trial).isNotEmpty();
    }
  }

  @Test
  void a_place_at_the_edge_reaches_the_edge() {
    DoubleBinaryOperator west = (x, y) -> x < -4 ? 0.8 : 0.1;
    Persistence p = found(rain("S1", west, A), rain("S2", west, A), rain("S3", west, A));
    Geometry outline = MAP.subject().green().outline();
    assertThat(p.wet().surePlaces()).hasSize(1);
    assertThat(p.wet().surePlaces().get(0).areaM2()).isCloseTo(segment(12.5, 4), within(8.0));
    assertThat(outline.buffer(1e-6).covers(p.wet().surePlaces().get(0).outline())).isTrue();
  }

  /** Area of the part of a disc beyond a chord. */
  private static double segment(double r, double d) {
    return r * r * Math.acos(d / r) - d * Math.sqrt(r * r - d * d);
  }

  @Test
  void what_cannot_be_compared_is_refused_with_its_reason() {
    SurveyedMap unknown =
        new SurveyedMap(map(MAP, "S2", WET, 60), WaterHistory.UNKNOWN, Optional.of(A));
    assertThat(refused(rain("S1", WET, A), unknown).why().reason())
        .contains("2 surveys or more")
        .contains("S2: the water before it is not on record");
    SurveyedMap otherOutline =
        new SurveyedMap(map(map(12), "S2", WET, 60), WaterHistory.AFTER_RAIN, Optional.of(A));
    assertThat(refused(rain("S1", WET, A), otherOutline).why().reason())
        .contains("S2: its outline of the green is not that of S1");
    SurveyedMap otherRods =
        new SurveyedMap(map(MAP, "S2", WET, 38), WaterHistory.AFTER_RAIN, Optional.of(A));
    assertThat(refused(rain("S1", WET, A), otherRods).why().reason())
        .contains("S2: rods of 38 mm, those of S1 have 60 mm");
    assertThat(refused().why().reason()).contains("0 can");
  }

  @Test
  void the_greatest_group_of_like_surveys_stays() {
    SurveyedMap otherRods =
        new SurveyedMap(map(MAP, "S1", WET, 38), WaterHistory.AFTER_RAIN, Optional.of(A));
    Persistence p = found(otherRods, rain("S2", WET, A), rain("S3", WET, A));
    assertThat(p.surveys()).extracting(Persistence.Counted::surveyId).containsExactly("S2", "S3");
    assertThat(p.leftOut()).hasSize(1);
  }

  @Test
  void a_survey_given_twice_or_an_unknown_history_asked_for_is_an_error() {
    assertThatThrownBy(() -> found(rain("S1", WET, A), rain("S1", WET, A)))
        .hasMessageContaining("survey S1 is there twice");
    assertThatThrownBy(
            () ->
                new PersistenceSettings(
                    java.util.Set.of(WaterHistory.UNKNOWN), GradeWeights.PROPOSAL))
        .hasMessageContaining("known water history");
  }

  @Test
  void a_place_is_followed_through_the_surveys() {
    SurveyedMap wet = rain("S1", WET, A);
    SurveyedMap sound = rain("S2", SOUND, B);
    PersistentPlace place = found(wet, rain("S3", WET, A)).wet().places().get(0);
    List<PlaceWetness> seen = PlaceWetness.of(place.outline(), List.of(wet, sound));
    assertThat(seen.get(0).wetChance()).isCloseTo(0.9, within(0.02));
    assertThat(seen.get(1).wetChance()).isCloseTo(0.05, within(1e-12));
    assertThat(seen).extracting(PlaceWetness::surveyId).containsExactly("S1", "S2");
    // against the rest itself, cut out
    Geometry green = MAP.subject().green().outline();
    Geometry rest = green.difference(place.outline());
    double own = mean(place.outline());
    assertThat(seen.get(0).excessPct()).isCloseTo(own - mean(rest), within(0.02));
  }

  private static double mean(Geometry ground) {
    Raster moisture = MAP.surface().interpolable();
    return Ground.of(ground, moisture).mean(new LinearSurface(moisture));
  }

  /** Of a share that is drawn evenly, the interval holds about nine in ten. */
  @Test
  void the_interval_is_calibrated() {
    SplittableRandom random = new SplittableRandom(17);
    int held = 0;
    int trials = 4000;
    for (int t = 0; t < trials; t++) {
      double truth = random.nextDouble();
      int k = 0;
      for (int s = 0; s < 8; s++) {
        k += random.nextDouble() < truth ? 1 : 0;
      }
      held += new SurveyShare(k, 8).interval().holds(truth) ? 1 : 0;
    }
    assertThat((double) held / trials).isBetween(0.87, 0.94);
  }
}
