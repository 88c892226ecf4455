package org.mottle.export.write;

import java.util.List;

/**
 * Nothing was delivered and earlier output is as it was: files exist that would be overwritten, the
 * disk is full, a folder cannot be written. One line a problem, each with its remedy.
 */
public final class OutputRefused extends RuntimeException {
  private final transient List<String> lines;

  public OutputRefused(List<String> lines) {
    this(lines, null);
  }

  public OutputRefused(List<String> lines, Throwable cause) {
    super(String.join(System.lineSeparator(), lines), cause);
    this.lines = List.copyOf(lines);
  }

  public List<String> lines() {
    return lines;
  }
}
