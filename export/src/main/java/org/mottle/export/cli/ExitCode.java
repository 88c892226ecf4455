package org.mottle.export.cli;

/** What the process returns. */
public final class ExitCode {
  /** Done. */
  public static final int DONE = 0;

  /** A fault of ours. */
  public static final int FAULT = 1;

  /** The input or the options were refused; nothing was written. */
  public static final int REFUSED = 2;

  /** Done, but something named in the summary could not be mapped. */
  public static final int PARTLY = 3;

  private ExitCode() {}
}
