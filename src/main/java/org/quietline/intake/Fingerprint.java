package org.quietline.intake;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.quietline.bench.Accounting.FileRead;

/** SHA-256 (FIPS 180-4), whole for a file and cut to eight digits for a fingerprint. */
final class Fingerprint {
  private static final int DIGITS = 8;

  private Fingerprint() {}

  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  static byte[] joined(byte[] first, byte[] second) {
    byte[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }

  static String hex(byte[] hash) {
    return HexFormat.of().formatHex(hash);
  }

  static String shortOf(byte[] bytes) {
    return hex(digest().digest(bytes)).substring(0, DIGITS);
  }

  /** Over a line of name and hash for each file, in the given order. */
  static String shortOf(List<FileRead> files) {
    StringBuilder lines = new StringBuilder();
    for (FileRead file : files) {
      lines.append(file.file()).append(' ').append(file.sha256()).append('\n');
    }
    return shortOf(lines.toString().getBytes(StandardCharsets.UTF_8));
  }
}
