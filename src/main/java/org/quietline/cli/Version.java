package org.quietline.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The program's own version, written into the jar when it was built. */
final class Version implements IVersionProvider {
  Version() {}

  static String number() {
    Properties properties = new Properties();
    try (InputStream in = Version.class.getResourceAsStream("version.properties")) {
      if (in == null) {
        throw new IllegalStateException("the program was built without version.properties");
      }
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties.getProperty("version", "unknown");
  }

  @Override
  public String[] getVersion() {
    return new String[] {"quietline " + number()};
  }
}
