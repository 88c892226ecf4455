package org.mottle.export.record;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Independent pieces of file work on several threads. The results come in the order of the work,
 * whatever the number of threads; of several failures the first in that order is told, once all
 * work has ended.
 */
public final class SideBySide {
  private SideBySide() {}

  /** Runs all of the work and gives its results. */
  public static <T> List<T> run(List<? extends Callable<T>> work, int threads) throws IOException {
    ExecutorService workers = Executors.newFixedThreadPool(threads);
    try {
      List<T> results = new ArrayList<>();
      for (Future<T> done : workers.invokeAll(work)) {
        results.add(done.get());
      }
      return results;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped by the caller", e);
    } catch (ExecutionException e) {
      throw told(e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }

  private static IOException told(Throwable cause) {
    if (cause instanceof RuntimeException fault) {
      throw fault;
    }
    if (cause instanceof Error error) {
      throw error;
    }
    return cause instanceof IOException io ? io : new IOException(cause);
  }
}
