package org.mottle.export.cli;

import java.io.PrintStream;
import org.mottle.export.problem.InputRefused;
import picocli.CommandLine.Option;

/** Options every command understands. */
final class CommonOptions {

  @Option(
      names = "--quiet",
      description = "Print nothing but refusals and, with --json, the summary.")
  boolean quiet;

  @Option(names = "--json", description = "Print one machine-readable summary on stdout.")
  boolean json;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Threads to use; the result is the same for any number. Default: all cores.")
  int threads = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--overwrite",
      description = "Replace earlier output. Without it, output that exists is refused.")
  boolean overwrite;

  int threads() {
    if (threads < 1) {
      throw new InputRefused("--threads must be 1 or more, was " + threads);
    }
    return threads;
  }

  /** Says something to the person, unless asked to be quiet; with --json stdout stays JSON. */
  void say(String format, Object... args) {
    if (!quiet) {
      PrintStream to = json ? System.err : System.out;
      to.println(args.length == 0 ? format : String.format(java.util.Locale.ROOT, format, args));
    }
  }

  ConsoleProgress progress() {
    boolean terminal = System.console() != null && System.getenv("TERM") != null;
    return new ConsoleProgress(
        quiet ? new PrintStream(java.io.OutputStream.nullOutputStream()) : System.err,
        terminal && !quiet);
  }
}
