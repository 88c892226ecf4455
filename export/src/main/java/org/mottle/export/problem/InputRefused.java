package org.mottle.export.problem;

import java.util.List;

/**
 * The input or the options cannot be used. Carries one line a problem: what, where, the value, the
 * remedy. The command line prints them and ends with exit code 2; nothing has been written by then.
 */
public final class InputRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final List<String> lines;

  public InputRefused(List<String> lines) {
    super(String.join("\n", lines));
    this.lines = List.copyOf(lines);
  }

  public InputRefused(String line) {
    this(List.of(line));
  }

  /** One line a problem, in the order they were found. */
  public List<String> lines() {
    return lines;
  }
}
