package org.quietline.intake.peek;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Function;

/** The head of a file that is too long to be tried whole, as a file of its own for a moment. */
final class HeadCopy {
  private final FileHead head;

  HeadCopy(FileHead head) {
    this.head = head;
  }

  <T> T read(Function<Path, T> reading) {
    try {
      Path copy = Files.createTempFile("head-", ".csv");
      try {
        byte[] bytes = head.copyOfHead();
        Files.write(copy, Arrays.copyOf(bytes, lastLineEnd(bytes)));
        return reading.apply(copy);
      } finally {
        Files.delete(copy);
      }
    } catch (IOException e) {
      throw new PeekException(
          head.name()
              + " is too long to be tried whole, and its first 4 MB could not be copied aside ("
              + e.getMessage()
              + ").");
    }
  }

  private static int lastLineEnd(byte[] bytes) {
    for (int i = bytes.length - 1; i > 0; i--) {
      if (bytes[i] == '\n') {
        return i + 1;
      }
    }
    return bytes.length;
  }
}
