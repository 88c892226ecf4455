package org.mottle.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What one operator reads higher than another, against figures by hand. */
class OperatorOffsetTest {

  /**
   * By hand: mean of 1, 2, 3, 2 is 2, squares about it 2; with the usual 5 · 1.7² = 14.45 the
   * variance is 16.45 / 8, the error of the mean √(2.05625 / 4).
   */
  @Test
  void fourPairsByHand() {
    OperatorOffset offset = OperatorOffset.of("B", "A", new double[] {1, 2, 3, 2});

    assertThat(offset.meanPct()).isCloseTo(2, within(1e-12));
    assertThat(offset.standardError()).isCloseTo(Math.sqrt(2.05625 / 4), within(1e-12));
    assertThat(offset.corrected()).isTrue();
    assertThat(offset.correctionPct()).isEqualTo(offset.meanPct());
    assertThat(offset.leftPct()).isEqualTo(offset.standardError());
    assertThat(offset.words())
        .isEqualTo("B reads +2.0 % against A (standard error 0.7, 4 stations read by both)");
  }

  /** Two pairs that agree by luck: 14.45 / 6 over two pairs, a standard error of 1.1. */
  @Test
  void twoLuckyPairsDoNotLookExact() {
    OperatorOffset offset = OperatorOffset.of("B", "A", new double[] {1.5, 1.5});

    assertThat(offset.standardError()).isCloseTo(Math.sqrt(14.45 / 6 / 2), within(1e-12));
    assertThat(offset.corrected()).isFalse();
    assertThat(offset.correctionPct()).isZero();
    assertThat(offset.leftPct())
        .as("what was not taken off is carried")
        .isCloseTo(Math.hypot(1.5, Math.sqrt(14.45 / 12)), within(1e-12));
  }

  @Test
  void onePairTellsNothing() {
    for (double[] pairs : new double[][] {{}, {4}}) {
      OperatorOffset offset = OperatorOffset.of("B", "A", pairs);
      assertThat(offset.known()).isFalse();
      assertThat(offset.corrected()).isFalse();
      assertThat(offset.correctionPct()).isZero();
    }
    assertThat(OperatorOffset.of("B", "A", new double[0]).words())
        .isEqualTo("B and A share 0 stations");
    assertThat(OperatorOffset.of("B", "A", new double[1]).words())
        .isEqualTo("B and A share 1 station");
  }

  @Test
  void smallOrUnsureOffsetsAreLeft() {
    assertThat(new OperatorOffset("B", "A", 0.5, 0.1, 40).corrected()).isFalse();
    assertThat(new OperatorOffset("B", "A", -0.51, 0.1, 40).corrected()).isTrue();
    assertThat(new OperatorOffset("B", "A", 1, 0.5, 12).corrected()).isFalse();
    assertThat(new OperatorOffset("B", "A", 1, 0.49, 12).corrected()).isTrue();
  }

  /** Exchanging the two turns the sign and nothing else. */
  @Test
  void theOtherWayRound() {
    double[] d = {1.2, 2.9, 0.4, 1.1, 2.2};
    double[] turned = {-1.2, -2.9, -0.4, -1.1, -2.2};
    OperatorOffset one = OperatorOffset.of("B", "A", d);
    OperatorOffset other = OperatorOffset.of("A", "B", turned);

    assertThat(other.meanPct()).isCloseTo(-one.meanPct(), within(1e-12));
    assertThat(other.standardError()).isCloseTo(one.standardError(), within(1e-12));
    assertThat(other.leftPct()).isCloseTo(one.leftPct(), within(1e-12));
  }
}
