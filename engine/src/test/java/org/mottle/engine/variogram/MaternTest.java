package org.mottle.engine.variogram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;

class MaternTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Matern(1, 30, 0.8);
  }

  @Override
  Map<String, VariogramModel> published() {
    Map<String, VariogramModel> models = new LinkedHashMap<>();
    for (String k : new String[] {"0.3", "0.5", "0.8", "1.5", "2.5"}) {
      double kappa = Double.parseDouble(k);
      models.put("Mat_k" + k, new Matern(1, 30, kappa));
      // gstat's Ste is the same with 2 sqrt(kappa) h/a
      models.put("Ste_k" + k, new Matern(1, 30 / (2 * Math.sqrt(kappa)), kappa));
    }
    return models;
  }

  /** Computed with R 4.2.2, uniroot on besselK to 1e-12. */
  @Test
  void practicalRangesAreThoseOfBesselK() {
    assertThat(new Matern(1, 1, 0.5).practicalRange()).isCloseTo(2.995732274, within(1e-9));
    assertThat(new Matern(1, 1, 0.8).practicalRange()).isCloseTo(3.643551269, within(1e-9));
    assertThat(new Matern(1, 1, 1.5).practicalRange()).isCloseTo(4.743864518, within(1e-9));
    assertThat(new Matern(1, 1, 2.5).practicalRange()).isCloseTo(5.918649346, within(1e-9));
  }

  @Test
  void closedFormsAndBesselFunctionAgree() {
    for (double kappa : new double[] {0.5, 1.5, 2.5}) {
      Matern closed = new Matern(2, 30, kappa);
      Matern near = new Matern(2, 30, kappa + 1e-13);
      for (double h = 1e-9; h < 1e3; h *= 1.3) {
        assertThat(near.semivariance(h))
            .as("kappa %s at %s m", kappa, h)
            .isCloseTo(closed.semivariance(h), within(2e-12));
      }
    }
  }

  /** 3.5: 1 - (1 + r + 2 r²/5 + r³/15) exp(-r), from DLMF 10.49.12. */
  @Test
  void halfIntegerWithoutSpecialCaseEqualsItsClosedForm() {
    Matern model = new Matern(1, 1, 3.5);
    for (double r = 1e-3; r < 50; r *= 1.2) {
      double closed = 1 - (1 + r + 0.4 * r * r + r * r * r / 15) * Math.exp(-r);
      assertThat(model.semivariance(r)).as("r %s", r).isCloseTo(closed, within(1e-13));
    }
  }

  /** With a = b / (2 sqrt(kappa)) and kappa growing, the limit is the Gaussian of range b. */
  @Test
  void greatKappaTendsToTheGaussian() {
    for (double kappa : new double[] {20, 50, 100}) {
      Matern model = new Matern(1, 30 / (2 * Math.sqrt(kappa)), kappa);
      Gaussian limit = new Gaussian(1, 30);
      for (double h = 1e-9; h < 300; h = h < 1 ? h * 1000 : h + 3) {
        double g = model.semivariance(h);
        assertThat(g).as("kappa %s at %s m", kappa, h).isBetween(0.0, 1.0);
        assertThat(g).isCloseTo(limit.semivariance(h), within(0.5 / kappa));
      }
    }
  }

  @Test
  void smallKappaRisesAtOnce() {
    Matern model = new Matern(1, 30, 0.05);
    // g ~ Gamma(1-k)/Gamma(1+k) (r/2)^(2k) for small r (DLMF 10.27.4 and 10.25.2)
    double expected = Gamma.gamma(0.95) / Gamma.gamma(1.05) * Math.pow(0.5e-6, 0.1);
    assertThat(model.semivariance(3e-5)).isCloseTo(expected, within(1e-10));
    assertThat(model.practicalRange()).isBetween(1.0, 90.0);
  }

  @Test
  void theTableOfTheInnerLoopsAgreesEverywhere() {
    for (double kappa : new double[] {0.05, 0.3, 0.8, 1, 3.7, 12, 60, 100}) {
      Matern model = new Matern(1, 30, kappa);
      double[] squared = new double[4000];
      double[] sum = new double[4000];
      for (int i = 0; i < squared.length; i++) {
        double lag = 1e-8 * Math.exp(28.0 * i / squared.length);
        squared[i] = lag * lag;
      }
      model.addSemivariances(squared, squared.length, sum);
      for (int i = 0; i < squared.length; i++) {
        double h = Math.sqrt(squared[i]);
        // a large kappa leaves 1e-12 in the logarithms of the exact form itself
        assertThat(sum[i])
            .as("kappa %s at %s m", kappa, h)
            .isCloseTo(model.semivariance(h), within(kappa > 10 ? 3e-12 : 1e-13));
      }
    }
  }

  @Test
  void isAValue() {
    Matern model = new Matern(2, 30, 0.8);
    assertThat(model)
        .isEqualTo(new Matern(1, 7, 0.8).with(2, 30))
        .hasToString("Matern[partialSill=2.0, range=30.0, kappa=0.8]");
    assertThat(model.hashCode()).isEqualTo(new Matern(2, 30, 0.8).hashCode());
    assertThat(model).isNotEqualTo(new Matern(2, 30, 0.9)).isNotEqualTo(new Spherical(2, 30));
  }

  @Test
  void kappaIsBounded() {
    assertThatThrownBy(() -> new Matern(1, 30, 0)).hasMessageContaining("kappa must be > 0.0");
    assertThatThrownBy(() -> new Matern(1, 30, 101)).hasMessageContaining("was 101.0");
  }
}
