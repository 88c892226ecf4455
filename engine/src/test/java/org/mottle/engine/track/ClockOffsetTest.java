package org.mottle.engine.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClockOffsetTest {
  private static final int SEEDS = 8;

  private static ClockOutcome.Found found(WalkedDay day, double offset, String name) {
    ClockOutcome outcome =
        ClockOffset.search(day.tracks(), day.ahead(offset), ClockSettings.DEFAULT);
    assertThat(outcome).as(name).isInstanceOf(ClockOutcome.Found.class);
    return (ClockOutcome.Found) outcome;
  }

  @ParameterizedTest
  @CsvSource({
    "9, 5, 0.6, false, 3600", "9, 10, 1.5, false, 3600", "6, 5, 0.6, false, 0",
    "6, 5, 0.6, true, -1234", "6, 10, 1.5, true, 437", "9, 5, 0.6, true, -7200",
    "2, 5, 0.6, false, 75"
  })
  void the_offset_is_found_within_five_seconds(
      int greens, int step, double jitterM, boolean onePiece, double offset) {
    for (int seed = 0; seed < SEEDS; seed++) {
      WalkedDay day = WalkedDay.of(seed, greens, step, jitterM, onePiece);
      ClockOutcome.Found found = found(day, offset, "seed " + seed);
      assertThat(found.offsetS()).as("seed " + seed).isCloseTo(offset, within(5.0));
      assertThat(found.standardErrorS()).as("seed " + seed).isBetween(1.9, 10.0);
    }
  }

  @Test
  void summer_time_is_named() {
    ClockOutcome.Found found = found(WalkedDay.of(3, 6, 5, 0.6, false), 3600, "seed 3");
    assertThat(found.offsetS()).isEqualTo(3600);
    assertThat(found.hours()).isEqualTo(1);
    assertThat(found.note())
        .isEqualTo(
            "the clock of the readings was 1 h ahead of that of the track, as with summer time:"
                + " corrected");
    ClockOutcome.Found none = found(WalkedDay.of(3, 6, 5, 0.6, false), 0, "seed 3");
    assertThat(none.note()).isEmpty();
    assertThat(none.hours()).isZero();
  }

  @Test
  void a_track_of_another_day_never_meets_the_readings() {
    WalkedDay day = WalkedDay.of(1, 4, 5, 0.6, false);
    ClockOutcome outcome =
        ClockOffset.search(day.tracks(), day.ahead(86_400), ClockSettings.DEFAULT);
    assertThat(((ClockOutcome.NotFound) outcome).why().toString())
        .isEqualTo(
            "the track never meets the readings: with any clock offset within 2.0 h at most 0 of 72"
                + " fall into it; check the date and the time zone of both, or give the track of"
                + " that day");
  }

  @Test
  void a_receiver_that_never_moved_tells_nothing() {
    WalkedDay day = WalkedDay.of(1, 4, 5, 0.6, true);
    double start = day.seconds()[0] - 9000;
    double[] t = new double[4000];
    for (int i = 0; i < t.length; i++) {
      t[i] = start + 5 * i;
    }
    Track still = new Track(t, new double[t.length], new double[t.length]);
    ClockOutcome outcome = ClockOffset.search(List.of(still), day.seconds(), ClockSettings.DEFAULT);
    assertThat(((ClockOutcome.NotFound) outcome).why().reason()).endsWith("about as well");
  }

  @Test
  void positions_by_time_are_as_good_as_they_say() {
    double squares = 0;
    double said = 0;
    int n = 0;
    for (int seed = 0; seed < SEEDS; seed++) {
      WalkedDay day = WalkedDay.of(seed, 3, 5, 0.6, false);
      List<TrackPlace> places = TrackPositions.at(day.tracks(), day.seconds(), 0.6, 2);
      for (int k = 0; k < places.size(); k++) {
        TrackPlace.At at = (TrackPlace.At) places.get(k);
        squares += (Math.pow(at.x() - day.x()[k], 2) + Math.pow(at.y() - day.y()[k], 2)) / 2;
        said += at.sdM() * at.sdM();
        n++;
      }
    }
    assertThat(Math.sqrt(squares / n)).as("seeds 0 to 7").isBetween(0.5, 0.75);
    assertThat(Math.sqrt(said / n)).isBetween(0.6, 1.0);
  }

  @Test
  void speed_times_clock_error_widens_the_place() {
    Track track =
        new Track(new double[] {0, 10, 20, 30}, new double[] {0, 12, 24, 24}, new double[4]);
    List<TrackPlace> places =
        TrackPositions.at(List.of(track), new double[] {10, 28, 50, 61, Double.NaN}, 0.8, 2);
    // 1.2 m/s for 2 s and 0.8 m: sqrt(0.64 + 5.76) = 2.53
    TrackPlace.At walking = (TrackPlace.At) places.get(0);
    assertThat(walking.x()).isEqualTo(12);
    assertThat(walking.sdM()).isCloseTo(2.5298, within(1e-4));
    assertThat(((TrackPlace.At) places.get(1)).sdM()).isEqualTo(0.8);
    // 20 s beyond the end at 1.2 m/s: sqrt(0.64 + 576)
    assertThat(((TrackPlace.At) places.get(2)).sdM()).isCloseTo(24.0133, within(1e-4));
    assertThat(((TrackPlace.NotPlaced) places.get(3)).why().reason())
        .isEqualTo("the nearest point of the track is 31 s away in time");
    assertThat(((TrackPlace.NotPlaced) places.get(4)).why().reason())
        .isEqualTo("the reading has no time");
  }

  @Test
  void further_insertions_share_their_place() {
    Track track = new Track(new double[] {0, 100}, new double[] {0, 10}, new double[2]);
    List<TrackPlace> places =
        TrackPositions.at(
            List.of(track), new double[] {0, 10, 20, 90}, new int[] {1, 2, 3, 2}, 1, 0);
    assertThat(places.subList(0, 3)).allMatch(p -> Math.abs(((TrackPlace.At) p).x() - 1) < 1e-12);
    assertThat(((TrackPlace.At) places.get(3)).x()).isCloseTo(9, within(1e-12));
  }
}
