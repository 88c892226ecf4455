package org.mottle.export.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CancellationException;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Nearest;
import org.mottle.export.write.OutputRefused;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The program: {@code mottle COMMAND [options]}. */
@Command(
    name = "mottle",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "Soil-moisture maps of putting greens: readings and outlines in, kriged surfaces, zones and"
            + " patches out, for any GIS.",
    footer = {
      "",
      "Exit codes: 0 done; 2 input or options refused, nothing written; 3 done, but something named"
          + " in the summary could not be mapped; 1 a fault of ours.",
      "Decision support: the site's agronomist decides."
    },
    subcommands = {
      DemoCommand.class,
      PlanCommand.class,
      ReviewCommand.class,
      MapCommand.class,
      AuditCommand.class,
      SeasonCommand.class,
      VariogramCommand.class,
      EstimateCommand.class,
      VerifyCommand.class,
      DrawingsCommand.class
    })
public final class Mottle implements Runnable {

  @CommandLine.Spec CommandLine.Model.CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().usage(System.out);
  }

  public static void main(String[] args) {
    System.exit(run(args));
  }

  /**
   * Runs one command and returns its exit code. What it prints is UTF-8, whatever the platform; the
   * streams of the process are as before when it returns. Not for several threads at a time.
   */
  public static int run(String... args) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    PrintStream utf8Out = new PrintStream(out, true, StandardCharsets.UTF_8);
    PrintStream utf8Err = new PrintStream(err, true, StandardCharsets.UTF_8);
    System.setOut(utf8Out);
    System.setErr(utf8Err);
    try {
      return execute(args);
    } finally {
      utf8Out.flush();
      utf8Err.flush();
      System.setOut(out);
      System.setErr(err);
    }
  }

  private static int execute(String... args) {
    CommandLine line = new CommandLine(new Mottle());
    line.setOut(new PrintWriter(System.out, true));
    line.setErr(new PrintWriter(System.err, true));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(Mottle::refuseOptions);
    line.setExecutionExceptionHandler((fault, command, result) -> explain(fault));
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      System.err.printf(
          java.util.Locale.ROOT,
          "this needs more memory than Java has (%.1f GB); use a larger --cell or fewer surveys at"
              + " once, or give it more, as in java -Xmx8g -jar mottle.jar%n",
          Runtime.getRuntime().maxMemory() / 1e9);
      return ExitCode.REFUSED;
    }
  }

  private static int refuseOptions(ParameterException e, String[] args) {
    String message = e.getMessage();
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      String typed = unmatched.getUnmatched().get(0);
      var spec = e.getCommandLine().getCommandSpec();
      var known = new java.util.TreeSet<String>(spec.subcommands().keySet());
      known.addAll(spec.optionsMap().keySet());
      message =
          "unknown option or command '"
              + typed
              + "'"
              + Nearest.to(typed, known).map(near -> "; did you mean '" + near + "'?").orElse("");
    }
    System.err.println(message);
    System.err.println(
        "'" + e.getCommandLine().getCommandSpec().qualifiedName() + " --help' lists the options.");
    return ExitCode.REFUSED;
  }

  private static int explain(Exception fault) {
    if (fault instanceof InputRefused refused) {
      refused.lines().forEach(System.err::println);
      return ExitCode.REFUSED;
    }
    if (fault instanceof OutputRefused refused) {
      refused.lines().forEach(System.err::println);
      return ExitCode.REFUSED;
    }
    if (fault instanceof CancellationException) {
      System.err.println("Stopped; nothing was written.");
      return ExitCode.REFUSED;
    }
    System.err.println(
        "A fault of ours, please report it with the lines below: " + fault.getMessage());
    fault.printStackTrace();
    return ExitCode.FAULT;
  }
}
