package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.record.Json;
import org.mottle.export.verify.UnreadableRecord;
import org.mottle.export.verify.Verification;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code mottle verify}: re-reads what was delivered against the record inside it. */
@Command(
    name = "verify",
    mixinStandardHelpOptions = true,
    description = "Re-reads what was delivered and checks it against the record inside it.")
final class VerifyCommand implements Callable<Integer> {

  @Mixin CommonOptions common;

  @Parameters(paramLabel = "FOLDER", description = "A folder that 'mottle map' wrote.")
  Path folder;

  @Override
  public Integer call() throws IOException {
    if (!Files.isRegularFile(folder.resolve(Verification.SUMMARY))) {
      throw new InputRefused(
          folder + " holds no " + Verification.SUMMARY + "; name a folder that 'mottle map' wrote");
    }
    Verification found = verification();
    if (common.json) {
      Map<String, Object> summary = new LinkedHashMap<>();
      summary.put("files", found.files());
      summary.put("faults", found.faults());
      summary.put("notes", found.notes());
      System.out.println(Json.text(summary));
    }
    found.notes().forEach(note -> common.say(note));
    found.faults().forEach(System.err::println);
    if (found.isFine()) {
      common.say(
          found.files() == 1 ? "%d file as delivered" : "%d files as delivered", found.files());
    }
    return found.isFine() ? ExitCode.DONE : ExitCode.REFUSED;
  }

  private Verification verification() throws IOException {
    try {
      return Verification.of(folder);
    } catch (UnreadableRecord e) {
      throw new InputRefused(e.getMessage() + "; deliver again into another folder");
    }
  }
}
