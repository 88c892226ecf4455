package org.mottle.engine.position;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class VisitShiftTest {
  private static final Map<String, Mark> MARKS = Map.of("H1", new Mark("H1", "G1", 100, 200));

  private static Tie tie(String mark, double dx, double dy) {
    return new Tie("S1", "G1", "A", mark, 100 + dx, 200 + dy, "sbas", 0);
  }

  @Test
  void the_mean_of_the_ties_is_drawn_to_the_prior() {
    // by hand: p2 = 1, s2 = 0.36/2 = 0.18, share 1/1.18
    VisitShift shift = VisitShift.of(List.of(tie("H1", 1, -1), tie("H1", 2, 0)), MARKS, 1, 0.6);
    assertThat(shift.dx()).isCloseTo(1.5 / 1.18, within(1e-12));
    assertThat(shift.dy()).isCloseTo(-0.5 / 1.18, within(1e-12));
    assertThat(shift.sdM()).isCloseTo(Math.sqrt(0.18 / 1.18), within(1e-12));
    assertThat(shift.notable()).isFalse();
  }

  @Test
  void a_shift_the_prior_cannot_hold_stands_as_measured_and_is_notable() {
    VisitShift shift = VisitShift.of(List.of(tie("H1", 4, 0), tie("H1", 4.4, 0)), MARKS, 1, 0.6);
    assertThat(shift.priorDropped()).isTrue();
    assertThat(shift.dx()).isCloseTo(4.2, within(1e-12));
    assertThat(shift.sdM()).isCloseTo(0.6 / Math.sqrt(2), within(1e-12));
    assertThat(shift.notable()).isTrue();
  }

  @Test
  void without_known_marks_the_prior_stands_and_the_marks_are_named() {
    VisitShift shift =
        VisitShift.of(List.of(tie("H8", 1, 0), tie("H9", 1, 0), tie("H8", 1, 0)), MARKS, 1.5, 1);
    assertThat(shift).isEqualTo(new VisitShift(0, 0, 1.5, 0, false, List.of("H8", "H9")));
  }

  @Test
  void the_standard_error_is_true_to_its_word() {
    Random random = new Random(7);
    double squares = 0;
    double said = 0;
    for (int i = 0; i < 2000; i++) {
      double b = random.nextGaussian();
      double first = b + 0.6 * random.nextGaussian();
      double second = b + 0.6 * random.nextGaussian();
      VisitShift shift =
          VisitShift.of(List.of(tie("H1", first, 0), tie("H1", second, 0)), MARKS, 1, 0.6);
      squares += (shift.dx() - b) * (shift.dx() - b);
      said += shift.sdM() * shift.sdM();
    }
    assertThat(Math.sqrt(squares / said)).as("seed 7").isCloseTo(1, within(0.06));
  }
}
