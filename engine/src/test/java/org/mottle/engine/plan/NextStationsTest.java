package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;

class NextStationsTest {
  private static final Geometry GREEN = InventedGreen.outline();
  private static final NextStations PLAN = NextStations.withDefaults();

  private static List<ModelDraw> draws(Observations survey, int count) {
    return IntStream.range(0, count)
        .mapToObj(
            d ->
                InventedGreen.draw(
                    NestedModel.of(0, new Exponential(3 + 0.3 * d, 5 + 0.4 * d)),
                    survey,
                    InventedGreen.NUGGET))
        .toList();
  }

  private static StationRanking rank(Observations survey, double... limits) {
    return PLAN.rank(GREEN, InventedGreen.places(survey), draws(survey, 8), limits);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void stations_keep_their_distance_from_the_edge_and_from_one_another(long seed) {
    Observations survey = InventedGreen.survey(GREEN, seed, 18);
    Geometry hole = new GeometryFactory().createPoint(new Coordinate(403, 701)).buffer(2);
    Geometry green = GREEN.difference(hole);
    Positions existing = InventedGreen.places(survey);
    StationRanking ranking = PLAN.rank(green, existing, draws(survey, 3), 21, 24);
    assertThat(ranking.stations()).as("seed %d", seed).hasSize(6);
    assertThat(ranking.stop()).isEqualTo(StopReason.ENOUGH);
    for (NextStation s : ranking.stations()) {
      Geometry point = new GeometryFactory().createPoint(new Coordinate(s.x(), s.y()));
      assertThat(green.contains(point)).as("seed %d, %s", seed, s).isTrue();
      assertThat(green.getBoundary().distance(point)).isGreaterThanOrEqualTo(1);
      assertThat(existing.nearest(s.x(), s.y())).isGreaterThanOrEqualTo(1.5);
      for (NextStation o : ranking.stations()) {
        double apart = Math.hypot(s.x() - o.x(), s.y() - o.y());
        assertThat(o.rank() == s.rank() || apart >= 1.5).as("%s and %s", s, o).isTrue();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void gains_are_what_the_expected_area_falls_by(long seed) {
    StationRanking ranking = rank(InventedGreen.survey(GREEN, seed, 18), 21, 24);
    double gained = ranking.stations().stream().mapToDouble(NextStation::gainM2).sum();
    assertThat(ranking.before() - ranking.after())
        .as("seed %d", seed)
        .isCloseTo(gained, within(1e-9));
    double share = ranking.stations().stream().mapToDouble(NextStation::gainShare).sum();
    assertThat(share).isCloseTo(gained / ranking.before(), within(1e-12)).isBetween(0.0, 1.0);
    assertThat(ranking.stations()).allMatch(s -> s.gainM2() >= 0.1 && s.gain().varianceDrop() > 0);
    assertThat(ranking.draws()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7);
    assertThat(ranking.stations().stream().map(NextStation::walk))
        .containsExactlyInAnyOrder(1, 2, 3, 4, 5, 6);
  }

  /** No candidate anywhere, at any step, is expected to do harm. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void no_reading_is_expected_to_do_harm(long seed) {
    Observations survey = InventedGreen.survey(GREEN, seed, 12);
    AreaPoints points = AreaPoints.of(GREEN, 1);
    DrawField field =
        new DrawField(draws(survey, 1).get(0), points, points.positions(), new double[] {20, 23});
    for (int step = 0; step < 4; step++) {
      double[] gain = new double[points.size()];
      field.addGains(Criterion.MISCLASSIFIED_AREA, gain);
      int best = 0;
      for (int c = 0; c < gain.length; c++) {
        assertThat(gain[c]).as("seed %d, step %d, site %d", seed, step, c).isNotNegative();
        best = gain[c] > gain[best] ? c : best;
      }
      double before = field.lossM2();
      field.take(best);
      assertThat(before - field.lossM2()).isCloseTo(gain[best], within(1e-9));
    }
  }

  @Test
  void far_from_the_limits_nothing_is_gained_and_nothing_is_asked() {
    StationRanking ranking = rank(InventedGreen.survey(GREEN, 1, 18), 2, 60);
    assertThat(ranking.stations()).isEmpty();
    assertThat(ranking.stop()).isEqualTo(StopReason.GAIN_TOO_SMALL);
    assertThat(ranking.before()).isLessThan(1e-3);
  }

  @Test
  void ends_where_the_next_station_is_not_worth_the_walk() {
    Observations survey = InventedGreen.survey(GREEN, 2, 18);
    StationRanking all = rank(survey, 21, 24);
    double third = all.stations().get(2).gainM2();
    double fourth = all.stations().get(3).gainM2();
    StationRanking short_ =
        PLAN.withLeastGainM2((third + fourth) / 2)
            .rank(GREEN, InventedGreen.places(survey), draws(survey, 8), 21, 24);
    assertThat(third).isGreaterThan(fourth);
    assertThat(short_.stations()).hasSize(3);
    assertThat(short_.stop()).isEqualTo(StopReason.GAIN_TOO_SMALL);
    assertThat(short_.stations().get(2).gainM2()).isEqualTo(third);
  }

  @Test
  void without_a_band_the_mean_kriging_variance_decides() {
    Observations survey = InventedGreen.survey(GREEN, 3, 12);
    StationRanking ranking = rank(survey);
    assertThat(ranking.criterion()).isEqualTo(Criterion.MEAN_VARIANCE);
    assertThat(ranking.stations()).hasSize(6);
    double drops = 0;
    double last = Double.POSITIVE_INFINITY;
    for (NextStation s : ranking.stations()) {
      assertThat(s.gainM2()).isNaN();
      assertThat(s.why()).isEqualTo(StationReason.FAR_FROM_READINGS);
      assertThat(s.gain().varianceDrop()).isBetween(0.0, last);
      last = s.gain().varianceDrop();
      drops += last;
    }
    assertThat(ranking.before() - ranking.after()).isCloseTo(drops, within(1e-9));
    // the values of the readings do not matter, only where they are
    Observations others = survey.withValues(new double[12]);
    assertThat(rank(others).stations()).isEqualTo(ranking.stations());
  }

  /** Four readings of one value, mirrored both ways: the north-western of equal places. */
  @Test
  void ties_go_north_and_then_west() {
    Geometry square = InventedGreen.rectangle(12, 12);
    Positions corners =
        Positions.of(new double[] {2.5, 9.5, 2.5, 9.5}, new double[] {2.5, 2.5, 9.5, 9.5});
    Observations survey = InventedGreen.observed(corners, new double[] {20, 20, 20, 20}, 1);
    ModelDraw draw = InventedGreen.draw(NestedModel.of(0, new Exponential(4, 1.5)), survey, 1);
    for (double[] limits : List.of(new double[] {19.5}, new double[0])) {
      NextStation first = PLAN.rank(square, corners, List.of(draw), limits).stations().get(0);
      assertThat(first.y()).as("%s", first).isGreaterThan(6);
      assertThat(first.x()).as("%s", first).isLessThan(6);
    }
  }

  @Test
  void draws_are_spread_evenly_and_unsound_ones_left_out() {
    Observations survey = InventedGreen.survey(GREEN, 4, 12);
    List<ModelDraw> twenty = new ArrayList<>(draws(survey, 20));
    Positions existing = InventedGreen.places(survey);
    assertThat(PLAN.withMostDraws(4).rank(GREEN, existing, twenty, 22).draws())
        .containsExactly(2, 7, 12, 17);
    ModelDraw unsound = InventedGreen.draw(InventedGreen.MODEL, survey.rows(), 1);
    assertThat(PLAN.rank(GREEN, existing, List.of(unsound, twenty.get(0)), 22).draws())
        .containsExactly(1);
    StationRanking none = PLAN.rank(GREEN, existing, List.of(unsound), 22);
    assertThat(none.stop()).isEqualTo(StopReason.NO_SOUND_DRAW);
    assertThat(none.stations()).isEmpty();
    assertThat(none.before()).isNaN();
  }

  @Test
  void a_green_without_room_has_no_next_station() {
    Observations survey = InventedGreen.survey(GREEN, 5, 12);
    StationRanking ranking =
        PLAN.withInset(40).rank(GREEN, InventedGreen.places(survey), draws(survey, 2), 21, 24);
    assertThat(ranking.stations()).isEmpty();
    assertThat(ranking.stop()).isEqualTo(StopReason.NO_PLACE_LEFT);
    assertThat(ranking.after()).isEqualTo(ranking.before()).isGreaterThan(1);
  }

  @Test
  void a_station_at_the_limit_and_one_far_away_are_told_apart() {
    Geometry strip = InventedGreen.rectangle(40, 4);
    double[] x = {1, 3, 5, 7, 9, 11, 13};
    double[] value = {15, 15, 15, 20, 25, 25, 25};
    Positions west = Positions.of(x, new double[] {2, 2, 2, 2, 2, 2, 2});
    Observations survey = InventedGreen.observed(west, value, 0.2);
    ModelDraw draw = InventedGreen.draw(NestedModel.of(0, new Exponential(20, 8)), survey, 0.2);
    Positions one = Positions.of(new double[] {7}, new double[] {3.6});
    Positions other = Positions.of(new double[] {39}, new double[] {2});
    NextStations plan = PLAN.withInset(0.3).withCount(1);
    NextStation near = plan.rank(strip, one, west, List.of(draw), 20).stations().get(0);
    NextStation far = plan.rank(strip, other, west, List.of(draw), 12).stations().get(0);
    assertThat(near.why()).isEqualTo(StationReason.NEAR_LIMIT);
    assertThat(far.why()).isIn(StationReason.FAR_FROM_READINGS, StationReason.BOTH);
  }

  @Test
  void bad_settings_are_refused_with_their_value() {
    assertThatThrownBy(() -> PLAN.withCount(0)).hasMessageContaining("was 0");
    assertThatThrownBy(() -> PLAN.withInset(-1))
        .hasMessageContaining("inset")
        .hasMessageContaining("-1");
    Observations survey = InventedGreen.survey(GREEN, 1, 12);
    assertThatThrownBy(() -> rank(survey, Double.NaN)).hasMessageContaining("limit of the band");
    assertThatThrownBy(() -> InventedGreen.draw(InventedGreen.MODEL, survey, -2))
        .hasMessageContaining("was -2.0");
  }
}
