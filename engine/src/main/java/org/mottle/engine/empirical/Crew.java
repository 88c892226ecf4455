package org.mottle.engine.empirical;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Runs jobs at the same time, a thread each, and waits for all. */
final class Crew {

  private Crew() {}

  static void run(List<Runnable> jobs) {
    ExecutorService crew = Executors.newFixedThreadPool(jobs.size());
    try {
      List<Future<?>> running = jobs.stream().<Future<?>>map(crew::submit).toList();
      for (Future<?> job : running) {
        job.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CancellationException("interrupted while " + jobs.size() + " threads were at work");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof CancellationException stopped) {
        throw stopped;
      }
      throw new IllegalStateException("a thread failed: " + e.getCause(), e.getCause());
    } finally {
      crew.shutdownNow();
    }
  }
}
