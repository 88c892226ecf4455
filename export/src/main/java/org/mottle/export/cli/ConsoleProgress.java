package org.mottle.export.cli;

import java.io.PrintStream;
import java.util.Locale;
import java.util.function.LongSupplier;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.mottle.engine.progress.Progress;

/**
 * Progress on stderr: drawn on a terminal, elsewhere at most one plain line a second. There a phase
 * shorter than a second says nothing, and a longer one ends with its last line. Thread-safe.
 */
final class ConsoleProgress implements Progress, AutoCloseable {
  private static final long SECOND = 1_000_000_000L;

  private final PrintStream err;
  private final boolean terminal;
  private final LongSupplier clock;
  private final long start;
  private long lastLine;
  private boolean longPhase;
  private String phase = "";
  private long shown = -1;
  private ProgressBar bar;

  ConsoleProgress(PrintStream err, boolean terminal) {
    this(err, terminal, System::nanoTime);
  }

  /**
   * @param clock nanoseconds from any origin
   */
  ConsoleProgress(PrintStream err, boolean terminal, LongSupplier clock) {
    this.err = err;
    this.terminal = terminal;
    this.clock = clock;
    this.start = clock.getAsLong();
  }

  @Override
  public synchronized void report(String newPhase, long done, long total) {
    if (!newPhase.equals(phase)) {
      closeBar();
      phase = newPhase;
      shown = -1;
      lastLine = clock.getAsLong();
      longPhase = false;
    }
    if (done <= shown) {
      return; // calls of one phase may come out of order
    }
    shown = done;
    long now = clock.getAsLong();
    if (terminal) {
      draw(done, total, now);
    } else if (now - lastLine >= SECOND || longPhase && done >= total) {
      lastLine = now;
      longPhase = true;
      err.printf(Locale.ROOT, "%s: %d of %d%n", phase, done, total);
    }
  }

  private void draw(long done, long total, long now) {
    if (bar == null) {
      if (now - start < SECOND / 2) {
        return; // short jobs need no bar
      }
      bar =
          new ProgressBarBuilder()
              .setTaskName(phase)
              .setInitialMax(total)
              .setStyle(ProgressBarStyle.ASCII)
              .setUpdateIntervalMillis(200)
              .build();
    }
    bar.maxHint(total);
    bar.stepTo(done);
  }

  private void closeBar() {
    if (bar != null) {
      bar.close();
      bar = null;
    }
  }

  @Override
  public synchronized void close() {
    closeBar();
  }
}
