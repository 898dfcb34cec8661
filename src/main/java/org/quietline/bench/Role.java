package org.quietline.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a tested sample was. */
public enum Role {
  /** A control material (ASTM D6299 check standard or quality control sample). */
  CONTROL,
  /** A batch, or an incoming oil. */
  PRODUCT,
  /** A reagent blank. */
  BLANK,
  /** A retained sample measured again in another session. */
  RETEST;

  /**
   * The word used in sheets and findings.
   *
   * @return the name in lower case
   */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * Finds a role by its word.
   *
   * @param text the word, in any case
   * @return empty when there is no such role
   */
  public static Optional<Role> parse(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(r -> r.key().equals(wanted)).findFirst();
  }
}
