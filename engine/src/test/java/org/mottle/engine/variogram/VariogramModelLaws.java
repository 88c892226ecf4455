package org.mottle.engine.variogram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.mottle.engine.reference.ReferenceTable;

/** What every model must obey; a test class a model says which. */
abstract class VariogramModelLaws {
  private static final long SEED = 20_310_502;

  /** The model with a sill (or coefficient) of 1 and a range a of 30 m (or its exponent). */
  abstract VariogramModel model();

  /** Columns of models_variogramLine.csv beside the models they belong to. */
  abstract java.util.Map<String, VariogramModel> published();

  @Test
  void nothingAtNoSeparation() {
    assertThat(model().semivariance(0)).isEqualTo(0);
    double[] sum = {0};
    model().addSemivariances(new double[] {0}, 1, sum);
    assertThat(sum[0]).isEqualTo(0);
  }

  @Test
  void neverFalls() {
    double before = 0;
    for (double h = 1e-6; h < 1e4; h *= 1.01) {
      double now = model().semivariance(h);
      assertThat(now).as("at %s m", h).isGreaterThanOrEqualTo(before - 1e-14);
      before = now;
    }
  }

  @Test
  void ninetyFivePerCentAtThePracticalRange() {
    double reach = model().practicalRange();
    if (!model().bounded()) {
      assertThat(reach).isInfinite();
      assertThat(model().semivariance(1e9)).isGreaterThan(10);
      return;
    }
    double share = model().semivariance(reach) / model().partialSill();
    if (model().semivariance(1.01 * model().range()) == model().partialSill()) {
      assertThat(share).as("ends at its range").isEqualTo(1);
      assertThat(reach).isEqualTo(model().range());
    } else {
      assertThat(share).isCloseTo(0.95, within(1e-13));
    }
  }

  @Test
  void approachesItsSill() {
    if (model().bounded()) {
      assertThat(model().semivariance(1e5)).isCloseTo(model().partialSill(), within(1e-12));
      assertThat(model().semivariance(1e300)).isEqualTo(model().partialSill());
    }
  }

  @Test
  void scalesWithSillAndRange() {
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      double c = Math.exp(20 * random.nextDouble() - 10);
      double h = 200 * random.nextDouble();
      VariogramModel doubled = model().with(c, model().range());
      assertThat(doubled.semivariance(h))
          .as("seed %s, sill %s, lag %s", SEED, c, h)
          .isCloseTo(c * model().semivariance(h), within(1e-13 * c * model().semivariance(h)));
      if (model().bounded()) {
        VariogramModel longer = model().with(1, 7 * model().range());
        assertThat(longer.semivariance(7 * h))
            .as("seed %s, lag %s", SEED, h)
            .isCloseTo(model().semivariance(h), within(1e-13));
      }
    }
  }

  @Test
  void manyAtOnceAreTheSameAsOneByOne() {
    Random random = new Random(SEED);
    double[] squared = new double[257];
    double[] sum = new double[257];
    for (int i = 0; i < squared.length; i++) {
      squared[i] = Math.pow(i < 40 ? 1e-3 * random.nextDouble() : 150 * random.nextDouble(), 2);
      sum[i] = i;
    }
    model().addSemivariances(squared, 250, sum);
    for (int i = 0; i < squared.length; i++) {
      double expected = i < 250 ? i + model().semivariance(Math.sqrt(squared[i])) : i;
      assertThat(sum[i])
          .as("seed %s, squared lag %s", SEED, squared[i])
          .isCloseTo(expected, within(1e-13 * Math.max(1, expected)));
    }
  }

  /** Computed with gstat 2.1.0 (R 4.2.2), variogramLine; formulas: Webster & Oliver 2007, ch. 5. */
  @Test
  void equalsGstat() {
    ReferenceTable table = ReferenceTable.of("models_variogramLine");
    assertThat(published()).isNotEmpty();
    published()
        .forEach(
            (column, model) -> {
              for (int row = 0; row < table.rows(); row++) {
                assertThat(model.semivariance(table.number(row, "h")))
                    .as("%s at %s m", column, table.text(row, "h"))
                    .isCloseTo(table.number(row, column), within(1e-10));
              }
            });
  }
}
