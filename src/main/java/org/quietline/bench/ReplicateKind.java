package org.quietline.bench;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a second reading repeats. Reading one vial twice says how the instrument reads; it says
 * nothing about pipetting. Only a fresh portion taken through the whole method does (ISO 5725-1,
 * repeatability conditions).
 */
public enum ReplicateKind {
  /** The same vial measured again. */
  RE_READ("re-read"),
  /** A fresh portion taken through the whole method. */
  RE_PREPARED("re-prepared");

  private final String key;

  ReplicateKind(String key) {
    this.key = key;
  }

  /**
   * The word used in settings and findings.
   *
   * @return {@code re-read} or {@code re-prepared}
   */
  public String key() {
    return key;
  }

  /**
   * Finds a kind by its word.
   *
   * @param text the word
   * @return empty when there is no such kind
   */
  public static Optional<ReplicateKind> parse(String text) {
    return Arrays.stream(values()).filter(k -> k.key.equals(text)).findFirst();
  }
}
