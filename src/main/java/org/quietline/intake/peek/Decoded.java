package org.quietline.intake.peek;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The text of a file's head, and how its encoding was found.
 *
 * @param text without a byte-order mark, whole lines only
 * @param setting the name to write as {@code encoding}; empty where none is needed
 * @param found the encoding in words
 * @param why what in the bytes says so
 */
record Decoded(String text, Optional<String> setting, String found, String why) {
  static final List<String> NAMES =
      List.of("UTF-8", "UTF-16", "UTF-16LE", "UTF-16BE", "windows-1252", "ISO-8859-1");

  static Decoded of(FileHead head, Optional<String> said) {
    Decoded decoded = said.map(name -> as(head, name)).orElseGet(() -> found(head));
    long controls = decoded.text.chars().filter(Decoded::isControl).count();
    if (decoded.text.indexOf(0) >= 0 || controls > decoded.text.length() / 100) {
      throw new PeekException(
          head.name()
              + " is no text: it holds NUL bytes or control signs, as a picture or a program does."
              + " Give a file of text.");
    }
    return decoded;
  }

  private static boolean isControl(int c) {
    return c < 0x20 && c != '\t' && c != '\n' && c != '\r';
  }

  private static Decoded as(FileHead head, String name) {
    String known =
        NAMES.stream()
            .filter(n -> n.equalsIgnoreCase(name))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no encoding: " + name));
    String text = text(head, Charset.forName(known));
    boolean plain = known.equals("UTF-8");
    return new Decoded(text, plain ? Optional.empty() : Optional.of(known), known, "you said so");
  }

  private static Decoded found(FileHead head) {
    if (startsWith(head, 0xEF, 0xBB, 0xBF)) {
      return mark(head, StandardCharsets.UTF_8, "UTF-8");
    }
    if (startsWith(head, 0xFF, 0xFE) || startsWith(head, 0xFE, 0xFF)) {
      return mark(head, StandardCharsets.UTF_16, "UTF-16");
    }
    if (head.zeros(1) > 0.3 && head.zeros(0) < 0.05) {
      return twoByte(head, "UTF-16LE", "every second byte");
    }
    if (head.zeros(0) > 0.3 && head.zeros(1) < 0.05) {
      return twoByte(head, "UTF-16BE", "every first byte of two");
    }
    return oneByte(head);
  }

  private static Decoded mark(FileHead head, Charset charset, String found) {
    return new Decoded(
        text(head, charset), Optional.empty(), found, "it begins with the byte-order mark");
  }

  private static Decoded twoByte(FileHead head, String name, String which) {
    return new Decoded(
        text(head, Charset.forName(name)),
        Optional.of(name),
        name + " without a byte-order mark",
        which + " is zero");
  }

  private static Decoded oneByte(FileHead head) {
    Utf8 utf8 = Utf8.in(head);
    if (utf8.spoilt() == 0) {
      return new Decoded(
          text(head, StandardCharsets.UTF_8),
          Optional.empty(),
          utf8.signs() == 0 ? "plain ASCII" : "UTF-8",
          utf8.signs() == 0
              ? "no byte is above 127, so every encoding reads it alike"
              : counted(utf8.signs(), "sign") + " beyond ASCII, all valid UTF-8");
    }
    if (utf8.signs() > utf8.spoilt()) {
      return new Decoded(
          text(head, StandardCharsets.UTF_8),
          Optional.empty(),
          "UTF-8, damaged",
          counted(utf8.signs(), "sign")
              + " beyond ASCII are valid UTF-8, "
              + utf8.spoilt()
              + " are not; their rows are set aside");
    }
    return new Decoded(
        text(head, Charset.forName("windows-1252")),
        Optional.of("windows-1252"),
        "windows-1252",
        utf8.middle() > 0
            ? "it is not UTF-8, and "
                + counted(utf8.middle(), "byte")
                + " from 80 to 9F are signs in this encoding only"
            : "it is not UTF-8; windows-1252 and ISO-8859-1 read it alike");
  }

  private static boolean startsWith(FileHead head, int... bytes) {
    if (head.length() < bytes.length) {
      return false;
    }
    for (int i = 0; i < bytes.length; i++) {
      if (head.at(i) != bytes[i]) {
        return false;
      }
    }
    return true;
  }

  private static String counted(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  private static String text(FileHead head, Charset charset) {
    CharsetDecoder decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .onUnmappableCharacter(CodingErrorAction.REPLACE);
    CharBuffer chars = CharBuffer.allocate(head.length() + 1);
    CoderResult end = decoder.decode(ByteBuffer.wrap(head.copyOfHead()), chars, head.isWhole());
    if (end.isOverflow()) {
      throw new IllegalStateException("more signs than bytes");
    }
    String text = chars.flip().toString();
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    return head.isWhole() ? plain : wholeLines(head, plain);
  }

  private static String wholeLines(FileHead head, String text) {
    int end = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
    if (end < 0) {
      throw new PeekException(
          head.name()
              + " holds no line end in its first 4 MB, so it is no sheet of rows. Was it exported"
              + " as a table?");
    }
    return text.substring(0, end + 1);
  }
}
