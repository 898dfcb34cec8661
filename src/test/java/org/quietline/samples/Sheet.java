package org.quietline.samples;

import java.util.ArrayList;
import java.util.List;

/** A small writer of comma-separated text: fields are quoted only where they must be. */
final class Sheet {
  private final List<String> lines = new ArrayList<>();

  Sheet(String header) {
    lines.add(header);
  }

  void add(List<String> fields) {
    lines.add(String.join(",", fields.stream().map(Sheet::quoted).toList()));
  }

  void add(String... fields) {
    add(List.of(fields));
  }

  String text() {
    return String.join("\n", lines) + "\n";
  }

  private static String quoted(String field) {
    boolean plain = field.indexOf(',') < 0 && field.indexOf('"') < 0 && field.indexOf('\n') < 0;
    return plain ? field : '"' + field.replace("\"", "\"\"") + '"';
  }
}
