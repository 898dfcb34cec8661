package org.quietline.intake.peek;

import java.util.Collection;
import java.util.stream.Collectors;

/** Texts and lists as TOML 1.0 writes them. */
final class Toml {
  private Toml() {}

  static String text(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                quoted.append('\\').appendCodePoint(c);
              } else if (c == '\t') {
                quoted.append("\\t");
              } else if (c < 0x20 || c == 0x7F) {
                quoted.append(String.format("\\u%04X", c));
              } else {
                quoted.appendCodePoint(c);
              }
            });
    return quoted.append('"').toString();
  }

  /** One text as it is, several as a list. */
  static String oneOrList(Collection<String> items) {
    return items.size() == 1 ? items.iterator().next() : list(items);
  }

  static String list(Collection<String> items) {
    return items.stream().collect(Collectors.joining(", ", "[", "]"));
  }
}
