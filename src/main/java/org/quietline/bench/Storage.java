package org.quietline.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a reagent is kept once opened. */
public enum Storage {
  /** In a refrigerator. */
  REFRIGERATED,
  /** Outside it. */
  AMBIENT;

  /**
   * The word used in sheets.
   *
   * @return the name in lower case
   */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * Finds a kind of storage by its word.
   *
   * @param text the word, in any case
   * @return empty when there is no such kind
   */
  public static Optional<Storage> parse(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.key().equals(wanted)).findFirst();
  }
}
