package org.quietline.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.security.DigestInputStream;
import java.util.function.LongConsumer;

/**
 * The characters of one sheet, decoded, hashed and counted in lines in one and the same read.
 *
 * <p>Bytes that are not UTF-8 become {@link #UNREADABLE}, so that the row that holds them can be
 * set aside; they are never replaced in silence. A byte-order mark is stepped over. A sheet that
 * begins with the mark of UTF-16 is decoded as such, only to count its rows.
 */
final class SheetText extends Reader {
  /** Stands where bytes could not be decoded; Unicode promises that no text holds this sign. */
  static final char UNREADABLE = '\uFFFF';

  private static final int CHUNK = 8192;

  private final PushbackInputStream in;
  private final DigestInputStream hashed;
  private final LongConsumer progress;
  private final LineLog lines = new LineLog();
  private final ByteBuffer bytes = ByteBuffer.allocate(CHUNK).flip();
  private final CharBuffer chars = CharBuffer.allocate(CHUNK).flip();
  private final boolean utf16;
  private final CharsetDecoder decoder;
  private boolean ended;
  private boolean saidEnd;

  /** Reads from a stream; the progress hears how many bytes each step took. */
  SheetText(InputStream stream, LongConsumer progress) throws IOException {
    this.hashed = new DigestInputStream(stream, Fingerprint.digest());
    this.in = new PushbackInputStream(hashed, 3);
    this.progress = progress;
    Charset charset = charsetByMark();
    this.utf16 = !charset.equals(StandardCharsets.UTF_8);
    this.decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
  }

  private Charset charsetByMark() throws IOException {
    byte[] first = in.readNBytes(3);
    if (first.length == 3 && first[0] == (byte) 0xEF && first[1] == (byte) 0xBB) {
      if (first[2] == (byte) 0xBF) {
        progress.accept(3);
        return StandardCharsets.UTF_8;
      }
    }
    in.unread(first);
    if (first.length >= 2 && first[0] == (byte) 0xFF && first[1] == (byte) 0xFE) {
      return StandardCharsets.UTF_16;
    }
    return first.length >= 2 && first[0] == (byte) 0xFE && first[1] == (byte) 0xFF
        ? StandardCharsets.UTF_16
        : StandardCharsets.UTF_8;
  }

  boolean isUtf16() {
    return utf16;
  }

  LineLog lines() {
    return lines;
  }

  /** The SHA-256 of the bytes read so far. */
  String sha256() {
    return Fingerprint.hex(hashed.getMessageDigest().digest());
  }

  /**
   * Hands out at most the rest of one line, so that whoever reads is never ahead of the line it
   * works on, and can be started anew on the next one.
   */
  @Override
  public int read(char[] target, int offset, int length) throws IOException {
    int n = 0;
    while (n < length) {
      while (!chars.hasRemaining() && !ended) {
        decode();
      }
      if (!chars.hasRemaining()) {
        break;
      }
      char c = chars.get();
      target[offset + n++] = c == '\uFFFE' ? UNREADABLE : c;
      lines.add(c);
      if (c == '\n' || (c == '\r' && !isNext('\n'))) {
        break;
      }
    }
    if (n == 0 && length > 0) {
      if (!saidEnd) {
        saidEnd = true;
        lines.end();
      }
      return -1;
    }
    return n;
  }

  private boolean isNext(char wanted) throws IOException {
    while (!chars.hasRemaining() && !ended) {
      decode();
    }
    return chars.hasRemaining() && chars.charAt(0) == wanted;
  }

  /** Steps over what is left of the line that was handed out in part. */
  void skipRestOfLine() throws IOException {
    char[] rest = new char[CHUNK];
    int n = 0;
    while (lines.isInside() && n >= 0) {
      n = read(rest, 0, rest.length);
    }
  }

  /** Whether a reader was told that there is nothing more. */
  boolean hasSaidEnd() {
    return saidEnd;
  }

  private void decode() throws IOException {
    boolean last = fill();
    chars.clear();
    CoderResult result = decoder.decode(bytes, chars, last);
    if (result.isError() && chars.hasRemaining()) {
      bytes.position(bytes.position() + result.length());
      chars.put(UNREADABLE);
    } else if (result.isUnderflow() && last) {
      decoder.flush(chars);
      ended = true;
    }
    chars.flip();
  }

  /** Puts more bytes behind those that are left; true when there are no more to come. */
  private boolean fill() throws IOException {
    bytes.compact();
    int n = in.read(bytes.array(), bytes.position(), bytes.remaining());
    if (n > 0) {
      bytes.position(bytes.position() + n);
      progress.accept(n);
    }
    bytes.flip();
    return n < 0;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
