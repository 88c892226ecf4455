package org.mottle.export.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Size and SHA-256 of a file's content. One pass, constant memory.
 *
 * @param bytes size
 * @param sha256 64 lower case hexadecimal digits
 */
public record Fingerprint(long bytes, String sha256) {

  public static Fingerprint of(Path file) throws IOException {
    MessageDigest digest = digest();
    long bytes = 0;
    try (InputStream in = Files.newInputStream(file)) {
      byte[] buffer = new byte[1 << 16];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        digest.update(buffer, 0, n);
        bytes += n;
      }
    }
    return new Fingerprint(bytes, HexFormat.of().formatHex(digest.digest()));
  }

  /** The first {@code digits} hexadecimal digits of the SHA-256 of a text in UTF-8. */
  public static String ofText(String text, int digits) {
    byte[] hash = digest().digest(text.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(hash).substring(0, digits);
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
