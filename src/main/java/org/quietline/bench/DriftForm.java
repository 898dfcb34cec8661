package org.quietline.bench;

import java.util.Arrays;
import java.util.Optional;

/** How the error of a calibration acts on results of other levels. */
public enum DriftForm {
  /** The same amount at every level, as that of a blank. */
  ADDITIVE("additive"),
  /** The same share of every level, as that of a slope. */
  PROPORTIONAL("proportional");

  private final String key;

  DriftForm(String key) {
    this.key = key;
  }

  /**
   * The word used in settings and findings.
   *
   * @return {@code additive} or {@code proportional}
   */
  public String key() {
    return key;
  }

  /**
   * Finds a form by its word.
   *
   * @param text the word
   * @return empty when there is no such form
   */
  public static Optional<DriftForm> parse(String text) {
    return Arrays.stream(values()).filter(f -> f.key.equals(text)).findFirst();
  }
}
