package org.quietline.intake.peek;

import java.util.List;
import java.util.Optional;

/**
 * What the user said about the file beforehand.
 *
 * @param timeFormats how times are written; empty to find out
 * @param decimal the decimal mark, {@code .}, {@code ,} or {@code either}
 * @param delimiter the sign between two columns
 * @param encoding the encoding
 * @param chosen answers such as {@code 2b}: question and line
 */
public record Answers(
    List<String> timeFormats,
    Optional<String> decimal,
    Optional<String> delimiter,
    Optional<String> encoding,
    List<String> chosen) {

  /** No answers. */
  public static final Answers NONE =
      new Answers(List.of(), Optional.empty(), Optional.empty(), Optional.empty(), List.of());

  /** Copies the lists. */
  public Answers {
    timeFormats = List.copyOf(timeFormats);
    chosen = List.copyOf(chosen);
  }

  /**
   * The encodings that can be read.
   *
   * @return their names
   */
  public static List<String> encodings() {
    return Decoded.NAMES;
  }

  /**
   * Whether an encoding can be read.
   *
   * @param name its name, in large or small letters
   * @return true when it is one of {@link #encodings()}
   */
  public static boolean knowsEncoding(String name) {
    return encodings().stream().anyMatch(name::equalsIgnoreCase);
  }
}
