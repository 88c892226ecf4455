package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SectorPatternTest {

  private static Head rated(Head h, double rate) {
    return new Head(
        h.id(),
        h.greenId(),
        h.station(),
        h.x(),
        h.y(),
        h.radiusM(),
        h.arcFrom(),
        h.arcTo(),
        rate,
        h.pressureKpa());
  }

  @Test
  void sharesSumToOneWhereWaterFalls() {
    List<Head> heads = SimulatedSurveys.heads(0, 0, 20);
    SectorPattern pattern = new SectorPattern(heads);
    double[][] place = SimulatedSurveys.places(200, new Random(1));
    for (int i = 0; i < 200; i++) {
      double sum = 0;
      for (Head h : heads) {
        sum += pattern.share(h, place[0][i], place[1][i]);
      }
      assertThat(sum).isCloseTo(1, within(1e-12));
    }
    assertThat(pattern.share(heads.get(0), 400, 0)).isZero();
  }

  /** A throw that thins as 1 − (r/R)²: at half its radius three quarters, on the circle none. */
  @Test
  void theThrowThinsOutwards() {
    Head head = new Head("H", "G", "", 0, 0, 16, 0, 180, Double.NaN, Double.NaN);
    assertThat(SectorPattern.depth(head, 8, 0)).isEqualTo(0.75);
    assertThat(SectorPattern.depth(head, 16, 0)).isZero();
    assertThat(SectorPattern.depth(head, -8, 0)).as("outside its arc").isZero();
  }

  @Test
  void ratesCountWhereAllAreKnown() {
    Head west = new Head("W", "G", "", -8, 0, 16, 0, 0, 10, Double.NaN);
    Head east = new Head("E", "G", "", 8, 0, 16, 0, 0, 30, Double.NaN);
    assertThat(new SectorPattern(List.of(west, east)).share(east, 0, 0)).isEqualTo(0.75);
    Head unknown = rated(east, Double.NaN);
    assertThat(new SectorPattern(List.of(west, unknown)).share(unknown, 0, 0)).isEqualTo(0.5);
  }
}
