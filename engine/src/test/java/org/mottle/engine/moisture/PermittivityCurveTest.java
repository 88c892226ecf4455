package org.mottle.engine.moisture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Files of this project's catalogue, computed apart with numpy from the published formulas. */
class PermittivityCurveTest {
  private static List<double[]> rows(String name) throws IOException {
    try (var in = PermittivityCurveTest.class.getResourceAsStream("/validation/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(l -> Arrays.stream(l.split(",")).mapToDouble(Double::parseDouble).toArray())
          .toList();
    }
  }

  @Test
  void curvesAreThePublishedOnes() throws IOException {
    List<PermittivityCurve> curves =
        List.of(
            new PermittivityCurve.Topp(),
            new PermittivityCurve.Ledieu(),
            new PermittivityCurve.LedieuDensity(1.5),
            new PermittivityCurve.MalickiDensity(1.2),
            new PermittivityCurve.MalickiDensity(1.5),
            new PermittivityCurve.MalickiPorosity(0.45),
            new PermittivityCurve.Mixing(0.5, 3.9, 0.45, 80.36),
            new PermittivityCurve.Mixing(0.5, 4.7, 0.40, 78.54),
            new PermittivityCurve.Mixing(0.46, 3.9, 0.45, 80.36));
    for (double[] row : rows("dielectric.csv")) {
      for (int k = 0; k < curves.size(); k++) {
        assertThat(curves.get(k).pct(row[0]) / 100)
            .as("%s at %s", curves.get(k), row[0])
            .isCloseTo(row[k + 1], within(1e-12));
      }
    }
  }

  @Test
  void waterAndTravelTime() throws IOException {
    for (double[] row : rows("water_permittivity.csv")) {
      assertThat(WaterPermittivity.aboutRoomTemperature(row[0])).isCloseTo(row[1], within(1e-9));
      assertThat(WaterPermittivity.malmberg(row[0])).isCloseTo(row[2], within(1e-9));
    }
    double e = WaterPermittivity.ofTravelTime(6, 0.15);
    assertThat(e).isCloseTo(35.95020715, within(1e-8));
    assertThat(new PermittivityCurve.Topp().pct(e)).isCloseTo(48.57059761, within(1e-7));
  }

  @Test
  void theInverseIsExact() throws IOException {
    for (double[] row : rows("topp_inverse.csv")) {
      assertThat(new PermittivityCurve.Topp().permittivity(100 * row[0]))
          .isCloseTo(row[3], within(1e-9));
    }
  }

  @Test
  void curvesByName() {
    assertThat(PermittivityCurve.named("topp", Double.NaN, Double.NaN)).isPresent();
    assertThat(PermittivityCurve.named("malicki", Double.NaN, Double.NaN)).isEmpty();
    assertThat(PermittivityCurve.named("malicki", Double.NaN, 0.4)).isPresent();
    assertThat(PermittivityCurve.named("nobody", 1.5, 0.4)).isEmpty();
  }

  /** Simulated for this project from Topp's polynomial. */
  @Test
  void rodsPartlyInReadTooLow() {
    assertThat(InsertionDepth.shown(18, 0.9)).isCloseTo(15.4, within(0.05));
    assertThat(InsertionDepth.shown(18, 0.8)).isCloseTo(12.9, within(0.05));
    assertThat(InsertionDepth.shown(25, 0.8)).isCloseTo(18.4, within(0.05));
    assertThat(InsertionDepth.shown(18, 0.7)).isCloseTo(10.5, within(0.05));
    for (double f : new double[] {0.6, 0.8, 0.95, 1}) {
      assertThat(InsertionDepth.impliedShare(InsertionDepth.shown(22, f), 22))
          .isCloseTo(f, within(1e-9));
    }
    // a pin half out, and one forced in: common practice, no source
    assertThat(InsertionDepth.impliedShare(16.2, 21.6)).isBetween(0.6, 0.95);
    assertThat(InsertionDepth.impliedShare(22.7, 21.6)).isGreaterThan(1);
  }

  /** Arithmetic of ASTM D2216 and ISO 11461, computed apart with numpy. */
  @Test
  void coresWeighed() throws IOException {
    for (double[] row : rows("gravimetric.csv")) {
      GravimetricCore core = new GravimetricCore(row[0], row[1], row[2], row[3]);
      assertThat(core.gravimetric()).isCloseTo(row[4], within(1e-12));
      assertThat(core.bulkDensity()).isCloseTo(row[6], within(1e-12));
      assertThat(core.pct() / 100).isCloseTo(row[7], within(1e-12));
      assertThat(core.porosity()).isCloseTo(row[8], within(1e-12));
      assertThat(core.saturation()).isCloseTo(row[9], within(1e-12));
    }
    assertThatThrownBy(() -> new GravimetricCore(100, 120, 20, 50)).hasMessageContaining("wet");
  }

  /** Against lm, vcov and predict of R 4.2.2 on the same eight pairs. */
  @Test
  void aSiteCurveIsThatOfR() {
    double[] raw = {8.1, 11.4, 14.9, 17.2, 20.8, 23.5, 27.9, 31.0};
    double[] core = {9.0, 11.1, 15.8, 16.9, 22.4, 23.6, 29.9, 31.5};
    SiteCurve curve = SiteCurve.of(raw, core);
    assertThat(curve.slope()).isCloseTo(SLOPE, within(1e-9));
    assertThat(curve.residualSd()).isCloseTo(SIGMA, within(1e-9));
    assertThat(curve.standardError(20)).isCloseTo(SE20, within(1e-9));
    assertThat(curve.predictionHalfWidth(20, 0.95)).isCloseTo(PI20, within(1e-8));
    assertThat(curve.extrapolates(33)).isTrue();
    var errors = curve.errors(raw);
    for (int i = 0; i < raw.length; i++) {
      double variance = 0;
      for (var e : errors) {
        variance += e.share()[i] * e.share()[i] * e.variance();
      }
      assertThat(Math.sqrt(variance)).isCloseTo(curve.standardError(raw[i]), within(1e-12));
    }
    assertThatThrownBy(() -> SiteCurve.of(new double[5], new double[5])).hasMessageContaining("6");
  }

  private static final double SLOPE = 1.0329158565809107;
  private static final double SIGMA = 0.86561588172641002;
  private static final double SE20 = 0.30720846377772904;
  private static final double PI20 = 2.2475226944308702;
}
