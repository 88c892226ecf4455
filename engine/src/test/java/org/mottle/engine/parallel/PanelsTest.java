package org.mottle.engine.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.progress.Progress;

class PanelsTest {

  @ParameterizedTest
  @CsvSource({"0, 10, 3", "1, 10, 3", "10, 10, 1", "101, 10, 1", "101, 10, 4", "7, 1, 16"})
  void everyItemIsDoneOnceAndReported(int total, int width, int threads) {
    AtomicIntegerArray done = new AtomicIntegerArray(Math.max(1, total));
    List<Long> reports = new CopyOnWriteArrayList<>();
    Progress progress = (phase, finished, all) -> reports.add(finished);
    Panels.run(
        total,
        width,
        threads,
        "test",
        progress,
        () ->
            (from, to) -> {
              assertThat(to - from).isBetween(1, width);
              for (int i = from; i < to; i++) {
                done.incrementAndGet(i);
              }
            });
    for (int i = 0; i < total; i++) {
      assertThat(done.get(i)).as("item " + i).isEqualTo(1);
    }
    assertThat(reports).hasSize((total + width - 1) / width);
    if (total > 0) {
      assertThat(reports).contains((long) total);
    }
  }

  @Test
  void aFailureOfAnyThreadStopsAllAndComesOut() {
    AtomicInteger panels = new AtomicInteger();
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(
            () ->
                Panels.run(
                    100_000,
                    1,
                    4,
                    "test",
                    Progress.NONE,
                    () ->
                        (from, to) -> {
                          panels.incrementAndGet();
                          if (from == 50) {
                            throw new IllegalStateException("panel " + from);
                          }
                          // all panels would take seconds, the news of a failure does not
                          LockSupport.parkNanos(100_000);
                        }))
        .withMessage("panel 50");
    assertThat(panels.get()).isLessThan(100_000);
  }

  @Test
  void theCallerCanStopIt() {
    AtomicInteger panels = new AtomicInteger();
    Progress stopping =
        new Progress() {
          @Override
          public void report(String phase, long done, long total) {}

          @Override
          public boolean cancelled() {
            return panels.get() >= 3;
          }
        };
    assertThatExceptionOfType(CancellationException.class)
        .isThrownBy(
            () ->
                Panels.run(
                    1000, 1, 2, "test", stopping, () -> (from, to) -> panels.incrementAndGet()));
    assertThat(panels.get()).isLessThan(10);
  }

  @Test
  void refusesNoThreads() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Panels.run(1, 1, 0, "test", Progress.NONE, () -> (from, to) -> {}))
        .withMessage("threads must be at least 1, was 0");
  }
}
