package org.mottle.engine.progress;

import java.util.concurrent.CancellationException;

/**
 * What a long computation tells its caller, and how the caller stops it. Implementations are called
 * from several threads and return quickly.
 */
public interface Progress {

  /** Says nothing and never stops. */
  Progress NONE = (phase, done, total) -> {};

  /**
   * {@code done} of {@code total} units of {@code phase} are finished. Calls of one phase may come
   * out of order.
   */
  void report(String phase, long done, long total);

  /** True once the caller wants the work to end; the default never does. */
  default boolean cancelled() {
    return false;
  }

  /** Ends the computation when the caller has asked for that. */
  default void check() {
    if (cancelled()) {
      throw new CancellationException("stopped by the caller");
    }
  }
}
