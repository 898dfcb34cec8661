package org.quietline.bench;

/**
 * The apparatus a method runs on.
 *
 * @param key its key, without a stroke
 * @param title its name as printed
 */
public record Instrument(String key, String title) {
  /** Checks the key and the title. */
  public Instrument {
    Checks.key("key", key);
    Checks.text("title", title);
  }
}
