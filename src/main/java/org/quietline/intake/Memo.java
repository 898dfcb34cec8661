package org.quietline.intake;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Remembers what texts meant, because most columns of a sheet repeat themselves: first of all the
 * text above, and beside it a bounded number of others, so that equal texts share one value.
 */
final class Memo<V> {
  private static final int MOST = 1000;

  private final Meaning<V> meaning;
  private final Map<String, V> known = new HashMap<>();
  private String lastText = "";
  private @Nullable V last;

  Memo(Meaning<V> meaning) {
    this.meaning = meaning;
  }

  /** What a text means. */
  @FunctionalInterface
  interface Meaning<V> {
    V of(String text) throws Unusable;
  }

  V get(String text) throws Unusable {
    V value = last;
    if (value == null || !text.equals(lastText)) {
      value = known.get(text);
      if (value == null) {
        value = meaning.of(text);
        if (known.size() < MOST) {
          known.put(text, value);
        }
      }
      last = value;
      lastText = text;
    }
    return value;
  }
}
