package org.quietline.intake;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import java.util.function.LongConsumer;

/**
 * The characters of one sheet, decoded and hashed in one and the same read.
 *
 * <p>Bytes that are not of the sheet's encoding become {@link #UNREADABLE}, so that the row that
 * holds them can be set aside; they are never replaced in silence. A byte-order mark tells UTF-8
 * and UTF-16 and is stepped over; without a mark and without a word of the settings a sheet is
 * UTF-8.
 */
final class SheetText implements Closeable {
  /** Stands where bytes could not be decoded; Unicode promises that no text holds this sign. */
  static final char UNREADABLE = '\uFFFF';

  private static final int CHUNK = 8192;
  private static final int LONGEST_MARK = 3;
  private static final long HIGH_BITS = 0x8080_8080_8080_8080L;

  private final InputStream in;
  private final LongConsumer progress;
  private final MessageDigest digest = Fingerprint.digest();
  private final ByteBuffer bytes = ByteBuffer.allocate(CHUNK).flip();
  private final Optional<Charset> mark;
  private final Charset charset;
  private final CharsetDecoder decoder;
  private final boolean startsAsAscii;
  private boolean allRead;
  private boolean ended;

  /**
   * Reads from a stream.
   *
   * @param in the bytes
   * @param named the encoding the settings name, if they name one
   * @param progress hears how many bytes each step took
   */
  SheetText(InputStream in, Optional<Charset> named, LongConsumer progress) throws IOException {
    this.in = in;
    this.progress = progress;
    while (bytes.remaining() < LONGEST_MARK && !allRead) {
      fill();
    }
    this.mark = markOf(bytes);
    this.charset = mark.or(() -> named).orElse(StandardCharsets.UTF_8);
    if (mark.isPresent()) {
      bytes.position(mark.get().equals(StandardCharsets.UTF_8) ? LONGEST_MARK : 2);
    }
    this.startsAsAscii = !charset.name().startsWith("UTF-16");
    this.decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
  }

  private static Optional<Charset> markOf(ByteBuffer first) {
    if (startsWith(first, 0xEF, 0xBB, 0xBF)) {
      return Optional.of(StandardCharsets.UTF_8);
    }
    if (startsWith(first, 0xFF, 0xFE)) {
      return Optional.of(StandardCharsets.UTF_16LE);
    }
    return startsWith(first, 0xFE, 0xFF)
        ? Optional.of(StandardCharsets.UTF_16BE)
        : Optional.empty();
  }

  private static boolean startsWith(ByteBuffer first, int... wanted) {
    for (int i = 0; i < wanted.length; i++) {
      if (i >= first.remaining() || (first.get(i) & 0xFF) != wanted[i]) {
        return false;
      }
    }
    return true;
  }

  /** The encoding that a byte-order mark tells, if there is one. */
  Optional<Charset> mark() {
    return mark;
  }

  /** The encoding in use, as a person calls it. */
  String encoding() {
    return charset.name().startsWith("UTF-16") ? "UTF-16" : charset.name();
  }

  /** The SHA-256 of the bytes read so far. */
  String sha256() {
    return Fingerprint.hex(digest.digest());
  }

  /**
   * Puts more characters into an array.
   *
   * @return how many, at least 1; -1 at the end of the text
   */
  int read(char[] target, int from, int most) throws IOException {
    while (!ended) {
      int n = startsAsAscii ? readAscii(target, from, most) : 0;
      n += n < most ? decode(target, from + n, most - n) : 0;
      if (n > 0) {
        return n;
      }
      if (!ended) {
        fill();
      }
    }
    return -1;
  }

  /** Signs below 128 mean the same in all encodings but UTF-16, and are most of any sheet. */
  private int readAscii(char[] target, int from, int most) {
    int start = bytes.position();
    int end = start + Math.min(bytes.remaining(), most);
    int at = start;
    while (at + Long.BYTES <= end && (bytes.getLong(at) & HIGH_BITS) == 0) {
      at += Long.BYTES;
    }
    while (at < end && bytes.get(at) >= 0) {
      at++;
    }
    byte[] array = bytes.array();
    for (int i = start; i < at; i++) {
      target[from + i - start] = (char) array[i];
    }
    bytes.position(at);
    return at - start;
  }

  private int decode(char[] target, int from, int most) {
    CharBuffer chars = CharBuffer.wrap(target, from, most);
    CoderResult result = decoder.decode(bytes, chars, allRead);
    if (result.isError() && chars.hasRemaining()) {
      bytes.position(bytes.position() + result.length());
      chars.put(UNREADABLE);
    } else if (result.isUnderflow() && allRead) {
      decoder.flush(chars);
      ended = true;
    }
    return chars.position() - from;
  }

  private void fill() throws IOException {
    bytes.compact();
    int n = in.read(bytes.array(), bytes.position(), bytes.remaining());
    if (n > 0) {
      digest.update(bytes.array(), bytes.position(), n);
      bytes.position(bytes.position() + n);
      progress.accept(n);
    }
    allRead = n < 0;
    bytes.flip();
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
