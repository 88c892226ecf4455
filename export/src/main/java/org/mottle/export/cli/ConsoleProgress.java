package org.mottle.export.cli;

import java.io.PrintStream;
import java.util.Locale;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.mottle.engine.progress.Progress;

/**
 * Progress on stderr: drawn on a terminal, elsewhere at most one plain line a second. Thread-safe.
 */
final class ConsoleProgress implements Progress, AutoCloseable {
  private static final long SECOND = 1_000_000_000L;

  private final PrintStream err;
  private final boolean terminal;
  private final long start = System.nanoTime();
  private long lastLine = start;
  private String phase = "";
  private long shown = -1;
  private ProgressBar bar;

  ConsoleProgress(PrintStream err, boolean terminal) {
    this.err = err;
    this.terminal = terminal;
  }

  @Override
  public synchronized void report(String newPhase, long done, long total) {
    if (!newPhase.equals(phase)) {
      closeBar();
      phase = newPhase;
      shown = -1;
    }
    if (done <= shown) {
      return; // calls of one phase may come out of order
    }
    shown = done;
    long now = System.nanoTime();
    if (terminal) {
      draw(done, total, now);
    } else if (now - lastLine >= SECOND) {
      lastLine = now;
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
