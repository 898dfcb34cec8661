package org.quietline.intake.peek;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The bytes that are looked at: the first 4 MB of a file and, where it is longer, its last 64 kB.
 */
final class FileHead {
  static final int MOST = 4_000_000;
  private static final int TAIL = 64_000;

  private final String name;
  private final long size;
  private final byte[] head;
  private final byte[] tail;

  private FileHead(String name, long size, byte[] head, byte[] tail) {
    this.name = name;
    this.size = size;
    this.head = head;
    this.tail = tail;
  }

  static FileHead read(Path file) {
    if (Files.isDirectory(file)) {
      throw new PeekException(file + " is a folder. Give one file in it.");
    }
    if (!Files.exists(file)) {
      throw new PeekException(file + " does not exist. Give the path of a file.");
    }
    if (!Files.isRegularFile(file)) {
      throw new PeekException(file + " is not a file of bytes on a disk. Give one that is.");
    }
    FileHead found = bytesOf(file);
    if (found.head.length == 0) {
      throw new PeekException(file + " is empty: it holds no byte.");
    }
    String kind = Magic.kindOf(found.head);
    if (!kind.isEmpty()) {
      throw new PeekException(file + " is " + kind);
    }
    return found;
  }

  private static FileHead bytesOf(Path file) {
    try (SeekableByteChannel channel = Files.newByteChannel(file)) {
      InputStream in = Channels.newInputStream(channel);
      byte[] head = in.readNBytes(MOST);
      long size = Math.max(channel.size(), head.length);
      byte[] tail = {};
      if (size > MOST) {
        channel.position(Math.max(MOST, size - TAIL));
        tail = in.readNBytes(TAIL);
      }
      return new FileHead(String.valueOf(file.getFileName()), size, head, tail);
    } catch (IOException e) {
      throw new PeekException(file + " could not be read. See that you may read it.");
    }
  }

  String name() {
    return name;
  }

  long size() {
    return size;
  }

  boolean isWhole() {
    return size <= head.length;
  }

  int length() {
    return head.length;
  }

  int at(int index) {
    return head[index] & 0xFF;
  }

  byte[] copyOfHead() {
    return head.clone();
  }

  /** Whether the last line has no end of its own, as when a drive is pulled out early. */
  boolean stopsInLine() {
    byte[] end = isWhole() ? head : tail;
    return end.length > 0
        && end[end.length - 1] != '\n'
        && end[end.length - 1] != '\r'
        && !(end.length > 1 && end[end.length - 1] == 0 && end[end.length - 2] == '\n');
  }

  /** Whether the end of a long file holds NUL bytes, though its head does not. */
  boolean hasDamagedEnd() {
    int zeros = 0;
    for (byte b : tail) {
      zeros += b == 0 ? 1 : 0;
    }
    return zeros > 0 && tail.length > 0 && !isTwoByteText();
  }

  private boolean isTwoByteText() {
    return zeros(0) > 0.3 || zeros(1) > 0.3;
  }

  /** The share of zero bytes among those at even or odd places of the head. */
  double zeros(int parity) {
    int zeros = 0;
    int seen = 0;
    for (int i = parity; i < Math.min(head.length, 20_000); i += 2) {
      zeros += head[i] == 0 ? 1 : 0;
      seen++;
    }
    return seen == 0 ? 0 : (double) zeros / seen;
  }
}
