package org.mottle.export.cli;

import org.mottle.export.job.ProgramVersion;
import picocli.CommandLine.IVersionProvider;

/** What {@code --version} prints. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {"mottle " + ProgramVersion.current()};
  }
}
