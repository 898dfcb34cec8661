package org.quietline.bench;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where a record was read from.
 *
 * @param file the file, relative to the bench folder, with forward strokes
 * @param line the line in it, counted from 1
 */
public record Origin(String file, long line) {
  private static final Pattern PLACE =
      Pattern.compile("(.*\\S)\\s*(?::|, line)\\s*([1-9]\\d{0,15})");

  /** Checks the line. */
  public Origin {
    Checks.text("file", file);
    if (line < 1) {
      throw new IllegalArgumentException("line " + line + " is not a line");
    }
  }

  /**
   * Reads a place as a person writes it, {@code readings/a.csv:17} or {@code readings/a.csv, line
   * 17}.
   *
   * @param text the place
   * @return empty when the text is no place
   */
  public static Optional<Origin> parse(String text) {
    Matcher place = PLACE.matcher(text.strip());
    return place.matches()
        ? Optional.of(new Origin(place.group(1), Long.parseLong(place.group(2))))
        : Optional.empty();
  }

  @Override
  public String toString() {
    return file + ", line " + line;
  }
}
