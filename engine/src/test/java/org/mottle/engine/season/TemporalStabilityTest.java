package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.mottle.engine.reference.ReferenceTable;

/** Figures of validation/README-season.txt, and laws of relative differences. */
class TemporalStabilityTest {
  private static final double NONE = Double.NaN;
  private static final ReferenceTable TABLE = ReferenceTable.of("temporal_stability");
  private static final List<String> SURVEYS = List.of("d1", "d2", "d3", "d4");

  private static double[][] published() {
    double[][] pct = new double[TABLE.rows()][SURVEYS.size()];
    for (int i = 0; i < pct.length; i++) {
      for (int t = 0; t < SURVEYS.size(); t++) {
        pct[i][t] = TABLE.number(i, SURVEYS.get(t));
      }
    }
    return pct;
  }

  private static StationSeries series(double[][] pct) {
    return new StationSeries(
        IntStream.rangeClosed(1, pct.length).mapToObj(Integer::toString).toList(),
        IntStream.rangeClosed(1, pct[0].length).mapToObj(t -> "d" + t).toList(),
        pct);
  }

  private static TemporalStability found(double[][] pct, double leastShare) {
    return (TemporalStability) TemporalStability.of(series(pct), leastShare);
  }

  private static double[][] invented(int stations, int surveys, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] pct = new double[stations][surveys];
    for (double[] row : pct) {
      Arrays.setAll(row, t -> random.nextDouble(12, 28));
    }
    return pct;
  }

  @Test
  void relative_differences_are_the_published_ones() {
    TemporalStability t = found(published(), 1);
    for (int i = 0; i < TABLE.rows(); i++) {
      TemporalStability.StationDifference s = t.stations().get(i);
      assertThat(s.mean()).isCloseTo(TABLE.number(i, "MRD"), within(1e-12));
      assertThat(s.sd()).isCloseTo(TABLE.number(i, "SDRD_ddof1"), within(1e-12));
      assertThat(s.index()).isCloseTo(TABLE.number(i, "ITS=sqrt(MRD2+SDRD2)"), within(1e-12));
    }
    assertThat(t.representativeStation().station()).isEqualTo("7");
  }

  @Test
  void rank_correlations_with_ties_are_the_published_ones() {
    ReferenceTable table = ReferenceTable.of("spearman");
    TemporalStability t = found(published(), 1);
    assertThat(t.correlations()).hasSize(table.rows());
    for (TemporalStability.RankCorrelation c : t.correlations()) {
      String pair = c.survey().substring(1) + "-" + c.other().substring(1);
      assertThat(c.spearman())
          .as(pair)
          .isCloseTo(table.number(table.rowOf("pair", pair), "rho_avg_ranks"), within(1e-12));
    }
  }

  @Test
  void mean_relative_differences_sum_to_nothing() {
    for (long seed = 1; seed <= 20; seed++) {
      TemporalStability t = found(invented(14, 5, seed), 1);
      double sum = t.stations().stream().mapToDouble(s -> s.mean()).sum();
      assertThat(sum).as("seed %d", seed).isCloseTo(0, within(1e-13));
    }
  }

  /** A wetter day, or another unit of moisture, is the same pattern. */
  @Test
  void multiplying_a_survey_changes_nothing() {
    double[][] pct = invented(9, 4, 7);
    TemporalStability before = found(pct, 1);
    for (double[] row : pct) {
      row[2] *= 1.7;
    }
    TemporalStability after = found(pct, 1);
    for (int i = 0; i < 9; i++) {
      assertThat(after.stations().get(i).mean())
          .isCloseTo(before.stations().get(i).mean(), within(1e-14));
      assertThat(after.stations().get(i).sd())
          .isCloseTo(before.stations().get(i).sd(), within(1e-14));
    }
    assertThat(after.correlations()).isEqualTo(before.correlations());
  }

  @Test
  void a_station_read_now_and_then_moves_no_other() {
    double[][] pct = invented(9, 4, 11);
    TemporalStability all = found(pct, 0.5);
    double[][] more = Arrays.copyOf(pct, 10);
    more[9] = new double[] {40, NONE, NONE, 41};
    TemporalStability with = found(more, 0.5);
    assertThat(with.stations().subList(0, 9)).isEqualTo(all.stations());
    assertThat(with.stations().get(9).times()).isEqualTo(2);
    assertThat(found(more, 0.75).leftOut()).containsExactly("10");
  }

  @Test
  void order_of_stations_does_not_matter() {
    double[][] pct = invented(8, 5, 3);
    List<double[]> rows = new ArrayList<>(List.of(pct));
    java.util.Collections.reverse(rows);
    TemporalStability forwards = found(pct, 1);
    TemporalStability backwards = found(rows.toArray(double[][]::new), 1);
    for (int i = 0; i < 8; i++) {
      assertThat(backwards.stations().get(7 - i).index())
          .isCloseTo(forwards.stations().get(i).index(), within(1e-14));
    }
  }

  @Test
  void too_little_is_refused_with_the_counts() {
    StabilityOutcome one = TemporalStability.of(series(invented(8, 1, 1)));
    assertThat(((StabilityOutcome.Refused) one).why().reason()).contains("had 1 and 8");
    double[][] gaps = {{20, NONE}, {NONE, 21}, {22, 23}, {19, 18}};
    StabilityOutcome few = TemporalStability.of(series(gaps), 0.5);
    assertThat(((StabilityOutcome.Refused) few).why().reason()).contains("had 2 and 2");
    assertThatThrownBy(() -> new StationSeries(List.of("1", "1"), List.of("S1"), new double[2][1]))
        .hasMessageContaining("station 1 is there twice");
  }
}
