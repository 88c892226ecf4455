package org.mottle.engine.empirical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/** Against gstat 2.1.0 (R 4.2.2) on the meuse data, and by hand on a few points. */
class ExperimentalVariogramTest {
  private static final Observations LOG_ZINC = Meuse.of("logzinc");
  private static final List<Direction> COMPASS =
      Stream.of(0.0, 45.0, 90.0, 135.0).map(a -> Direction.of(a, 22.5)).toList();

  @Test
  void defaultLags() {
    LagBins bins = LagBins.defaultsFor(LOG_ZINC);
    // a third of the diagonal is 1596.622616 m; gstat multiplies by 0.33333
    assertThat(bins.cutoff()).isCloseTo(1596.622616 * 0.99999, within(1e-6));
    assertThat(bins.width()).isCloseTo(106.4415077 * 0.99999, within(1e-7));
    assertThat(bins.count()).isEqualTo(15);
    assertSame(ExperimentalVariogram.of(LOG_ZINC), "meuse_vgm_default");
  }

  @Test
  void lagsOf100Metres() {
    assertSame(one(LOG_ZINC, 1500, 100, Estimator.MATHERON), "meuse_vgm_1500_100");
  }

  @Test
  void cressieHawkins() {
    assertSame(one(LOG_ZINC, 1500, 100, Estimator.CRESSIE_HAWKINS), "meuse_vgm_cressie_1500_100");
  }

  @Test
  void valuesInTheHundreds() {
    assertSame(one(Meuse.of("zinc"), 1500, 100, Estimator.MATHERON), "meuse_vgm_rawzinc_1500_100");
  }

  @Test
  void residualsOfATrend() {
    assertSame(ExperimentalVariogram.of(Meuse.residuals()), "meuse_vgm_resid_sqrtdist");
  }

  @Test
  void fourDirectionsOnDefaultLags() {
    assertSame(directional(LagBins.defaultsFor(LOG_ZINC)), "meuse_vgm_dir_default");
  }

  @Test
  void fourDirectionsOnLagsOf150Metres() {
    assertSame(directional(new LagBins(1500, 150)), "meuse_vgm_dir_1500_150");
  }

  @Test
  void dowdIsTheMedianOfTheAbsoluteDifferences() {
    // differences of the three pairs 1 m apart: 1, 4, 2; of the two pairs 2 m apart: 3, 2
    Observations line =
        Observations.of(new double[] {0, 1, 2, 3}, new double[4], new double[] {1, 2, -2, 0});
    List<Lag> lags = one(line, 2, 1, Estimator.DOWD).lags();
    assertThat(lags.get(0).semivariance()).isCloseTo(0.5 * 2.198 * 2 * 2, within(1e-14));
    assertThat(lags.get(1).semivariance()).isCloseTo(0.5 * 2.198 * 2.5 * 2.5, within(1e-14));
  }

  @Test
  void aPairOnABoundaryBelongsToTheLowerLag() {
    Observations line =
        Observations.of(new double[] {0, 10, 25}, new double[3], new double[] {0, 2, 6});
    List<Lag> lags = one(line, 25, 10, Estimator.MATHERON).lags();
    assertThat(lags).containsExactly(new Lag(1, 10, 2), new Lag(1, 15, 8), new Lag(1, 25, 18));
  }

  @Test
  void aDirectionIncludesItsBoundaries() {
    Observations square =
        Observations.of(
            new double[] {0, 1, 0, 1}, new double[] {0, 0, 1, 1}, new double[] {0, 1, 2, 4});
    for (double azimuth : new double[] {0, 90}) {
      ExperimentalVariogram v =
          ExperimentalVariogram.of(
              List.of(square),
              new LagBins(1.5, 0.5),
              Estimator.MATHERON,
              Direction.of(azimuth, 45),
              1);
      assertThat(v.lags()).as("azimuth %s", azimuth).extracting(Lag::pairs).containsExactly(2L, 2L);
    }
  }

  @Test
  void emptyLagsAreNotListed() {
    Observations far =
        Observations.of(new double[] {0, 1, 100}, new double[3], new double[] {1, 2, 4});
    assertThat(one(far, 100, 1, Estimator.MATHERON).lags())
        .extracting(Lag::distance)
        .containsExactly(1.0, 99.0, 100.0);
  }

  @Test
  void coincidentPairsDoNotEnterButAreCounted() {
    Observations twice =
        Observations.of(new double[] {5, 5, 6}, new double[3], new double[] {1, 9, 3});
    for (Estimator estimator : Estimator.values()) {
      ExperimentalVariogram v = one(twice, 3, 1, estimator);
      assertThat(v.coincidentPairs()).isEqualTo(1);
      assertThat(v.pairs()).isEqualTo(2);
    }
  }

  @Test
  void tooFewPointsGiveNoLags() {
    Observations none = Observations.of(new double[0], new double[0], new double[0]);
    Observations single = Observations.of(new double[] {3}, new double[] {4}, new double[] {5});
    assertThat(ExperimentalVariogram.of(none).lags()).isEmpty();
    assertThat(ExperimentalVariogram.of(single).lags()).isEmpty();
    assertThat(ExperimentalVariogram.of(single).longestLag()).isZero();
  }

  @Test
  void tellsHowFarItIsAndCanBeStopped() {
    List<Long> done = new java.util.concurrent.CopyOnWriteArrayList<>();
    ExperimentalVariogram.directional(
        List.of(LOG_ZINC),
        new LagBins(500, 100),
        Estimator.MATHERON,
        COMPASS.subList(0, 1),
        1,
        (phase, now, total) -> {
          assertThat(phase).isEqualTo("variogram");
          assertThat(total).isEqualTo(3);
          done.add(now);
        });
    assertThat(done).containsExactly(1L, 2L, 3L);
    Progress stop =
        new Progress() {
          @Override
          public void report(String phase, long now, long total) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    assertThatThrownBy(
            () ->
                ExperimentalVariogram.directional(
                    List.of(LOG_ZINC), new LagBins(9, 1), Estimator.DOWD, COMPASS, 2, stop))
        .isInstanceOf(java.util.concurrent.CancellationException.class);
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> new LagBins(0, 1)).hasMessage("cutoff must be > 0.0 m, was 0.0");
    assertThatThrownBy(() -> new LagBins(100, Double.NaN)).hasMessageContaining("was NaN");
    assertThatThrownBy(() -> new LagBins(1e9, 1)).hasMessageContaining("use a wider lag");
    assertThatThrownBy(() -> Direction.of(0, 91)).hasMessageContaining("was 91.0");
    assertThatThrownBy(() -> new Lag(0, 1, 1)).hasMessageContaining("had 0");
    assertThatThrownBy(
            () ->
                ExperimentalVariogram.of(
                    List.of(LOG_ZINC), new LagBins(1, 1), Estimator.DOWD, Direction.ALL, 0))
        .hasMessage("threads must be >= 1, was 0");
  }

  private static ExperimentalVariogram one(
      Observations o, double cutoff, double width, Estimator estimator) {
    return ExperimentalVariogram.of(
        List.of(o), new LagBins(cutoff, width), estimator, Direction.ALL, 1);
  }

  private static ExperimentalVariogram directional(LagBins bins) {
    return ExperimentalVariogram.directional(
        List.of(LOG_ZINC), bins, Estimator.MATHERON, COMPASS, 1);
  }

  private static void assertSame(ExperimentalVariogram actual, String name) {
    List<Lag> expected = Meuse.published(name).lags();
    assertThat(actual.lags()).hasSameSizeAs(expected);
    for (int i = 0; i < expected.size(); i++) {
      Lag a = actual.lags().get(i);
      Lag e = expected.get(i);
      assertThat(a.pairs()).as("%s row %s", name, i + 1).isEqualTo(e.pairs());
      assertThat(a.direction()).isEqualTo(e.direction());
      assertThat(a.distance())
          .as("%s row %s", name, i + 1)
          .isCloseTo(e.distance(), within(1e-8 * e.distance()));
      assertThat(a.semivariance())
          .as("%s row %s", name, i + 1)
          .isCloseTo(e.semivariance(), within(1e-8 * e.semivariance()));
    }
  }
}
