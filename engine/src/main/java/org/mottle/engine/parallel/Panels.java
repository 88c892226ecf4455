package org.mottle.engine.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.mottle.engine.progress.Progress;

/**
 * Work on {@code total} items in panels of neighbouring items, on any number of threads. Which
 * thread takes which panel is open, so a piece of work may write only to its own items and must not
 * depend on the others; then the bytes are the same for every number of threads.
 */
public final class Panels {

  /** Work on the items [from, to); holds the scratch memory of one thread. */
  @FunctionalInterface
  public interface Work {
    void panel(int from, int to);
  }

  private final int total;
  private final int width;
  private final String phase;
  private final Progress progress;
  private final AtomicInteger next = new AtomicInteger();
  private final AtomicLong done = new AtomicLong();
  private final AtomicBoolean stop = new AtomicBoolean();
  private final AtomicReference<Throwable> failure = new AtomicReference<>();

  private Panels(int total, int width, String phase, Progress progress) {
    this.total = total;
    this.width = width;
    this.phase = phase;
    this.progress = progress;
  }

  /**
   * Does all panels and returns when the last one is finished. The first failure of any thread is
   * thrown here once all threads have stopped; so is the cancellation of {@code progress}.
   *
   * @param total number of items
   * @param width items of a panel
   * @param threads at least 1; the calling thread is one of them
   * @param worker makes the work of one thread
   */
  public static void run(
      int total,
      int width,
      int threads,
      String phase,
      Progress progress,
      Supplier<? extends Work> worker) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads must be at least 1, was " + threads);
    }
    new Panels(total, width, phase, progress).run(threads, worker);
  }

  private void run(int threads, Supplier<? extends Work> worker) {
    int panels = (int) ((total + (long) width - 1) / width);
    List<Thread> helpers = new ArrayList<>();
    for (int t = 1; t < Math.min(threads, panels); t++) {
      Thread helper = new Thread(() -> drain(worker), "mottle " + phase + " " + t);
      helper.setDaemon(true);
      helper.start();
      helpers.add(helper);
    }
    drain(worker);
    helpers.forEach(Panels::join);
    Throwable thrown = failure.get();
    if (thrown instanceof RuntimeException e) {
      throw e;
    }
    if (thrown instanceof Error e) {
      throw e;
    }
  }

  private void drain(Supplier<? extends Work> worker) {
    try {
      Work work = worker.get();
      while (!stop.get()) {
        long from = (long) next.getAndIncrement() * width;
        if (from >= total) {
          return;
        }
        progress.check();
        int to = (int) Math.min(from + width, total);
        work.panel((int) from, to);
        progress.report(phase, done.addAndGet(to - from), total);
      }
    } catch (RuntimeException | Error e) {
      failure.compareAndSet(null, e);
      stop.set(true);
    }
  }

  /** Waits through interruptions: a helper left behind would go on writing to the results. */
  private static void join(Thread helper) {
    boolean interrupted = false;
    while (true) {
      try {
        helper.join();
        break;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
