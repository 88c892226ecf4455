package org.mottle.export.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version the build wrote into the jar. */
public final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {"mottle " + current()};
  }

  public static String current() {
    try (InputStream in = Version.class.getResourceAsStream("/org/mottle/export/version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
