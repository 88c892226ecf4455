package org.mottle.export.job;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version the build wrote into the jar. */
public final class ProgramVersion {

  private ProgramVersion() {}

  public static String current() {
    try (InputStream in =
        ProgramVersion.class.getResourceAsStream("/org/mottle/export/version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
