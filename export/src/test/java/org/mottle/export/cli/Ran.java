package org.mottle.export.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One run of the program, as a person at a terminal sees it.
 *
 * @param exitCode what the process would return
 * @param out everything on stdout
 * @param err everything on stderr
 */
record Ran(int exitCode, String out, String err) {

  static Ran mottle(List<String> args) {
    return mottle(args.toArray(String[]::new));
  }

  static Ran mottle(String... args) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream caughtOut = new ByteArrayOutputStream();
    ByteArrayOutputStream caughtErr = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(caughtOut, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(caughtErr, true, StandardCharsets.UTF_8));
      int exitCode = Mottle.run(args);
      return new Ran(
          exitCode,
          caughtOut.toString(StandardCharsets.UTF_8),
          caughtErr.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  List<String> errLines() {
    return err.lines().toList();
  }
}
