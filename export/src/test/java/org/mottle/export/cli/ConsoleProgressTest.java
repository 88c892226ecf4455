package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Plain lines, as they stand in a log. */
class ConsoleProgressTest {
  private final ByteArrayOutputStream caught = new ByteArrayOutputStream();
  private long now;
  private final ConsoleProgress progress =
      new ConsoleProgress(new PrintStream(caught, true, StandardCharsets.UTF_8), false, () -> now);

  private void at(double seconds, String phase, long done) {
    now = Math.round(seconds * 1e9);
    progress.report(phase, done, 10);
  }

  private List<String> lines() {
    return caught.toString(StandardCharsets.UTF_8).lines().toList();
  }

  @Test
  void shortPhasesSayNothingHoweverManyThereAre() {
    for (int i = 0; i < 9; i++) {
      at(i * 0.6, "phase " + i, 1);
      at(i * 0.6 + 0.5, "phase " + i, 10);
    }
    assertThat(lines()).isEmpty();
  }

  @Test
  void aLongPhaseSaysOneLineASecondAndItsLast() {
    at(0, "kriging", 1);
    at(0.9, "kriging", 3);
    at(1.1, "kriging", 4);
    at(1.2, "kriging", 5);
    at(2.3, "kriging", 9);
    at(2.4, "kriging", 8); // late
    at(2.5, "kriging", 10);
    at(2.6, "kriging", 10);
    at(3.0, "zones", 10);
    assertThat(lines())
        .containsExactly("kriging: 4 of 10", "kriging: 9 of 10", "kriging: 10 of 10");
  }
}
