package org.quietline.intake.peek;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A {@code bench.toml} that knows whatever a file names, for a file that belongs to no bench. */
final class AssumedBench {
  private static final int MOST = 5000;

  private AssumedBench() {}

  static String of(Grid grid, Assigned assigned) {
    StringBuilder toml = new StringBuilder("name = \"assumed\"\ntimezone = \"UTC\"\n");
    Set<String> methods = texts(assigned, Field.METHOD);
    String unit =
        texts(assigned, Field.UNIT).stream()
            .findFirst()
            .or(() -> ColumnDraft.unitOf(assigned.all(Field.READINGS)))
            .orElse("% mass");
    for (String method : methods) {
      entry(toml, "method", Map.of("key", method));
      toml.append("title = ").append(Toml.text(method)).append('\n');
      toml.append("unit = ").append(Toml.text(unit)).append('\n');
      toml.append("decimals = 3\nreplicates = 2\nreplicate-kind = \"re-read\"\n");
    }
    texts(assigned, Field.INSTRUMENT).forEach(key -> entry(toml, "instrument", Map.of("key", key)));
    for (Map<String, String> material : materials(grid, assigned)) {
      entry(toml, "material", material);
    }
    return toml.toString();
  }

  private static void entry(StringBuilder toml, String kind, Map<String, String> keys) {
    toml.append("\n[[").append(kind).append("]]\n");
    keys.forEach(
        (key, text) -> toml.append(key).append(" = ").append(Toml.text(text)).append('\n'));
  }

  private static Set<String> texts(Assigned assigned, Field field) {
    Set<String> texts = new LinkedHashSet<>();
    assigned.one(field).ifPresent(column -> texts.addAll(column.distinct()));
    texts.removeIf(text -> text.indexOf('/') >= 0 && field != Field.UNIT);
    if (texts.isEmpty() && field != Field.UNIT) {
      texts.add(DefaultDraft.OPEN_KEY);
    }
    return texts;
  }

  private static Set<Map<String, String>> materials(Grid grid, Assigned assigned) {
    Set<Map<String, String>> materials = new LinkedHashSet<>();
    Optional<Column> methods = assigned.one(Field.METHOD);
    if (assigned.one(Field.SAMPLE).isPresent()) {
      int sample = assigned.one(Field.SAMPLE).get().place();
      for (Grid.Cells row : grid.rows()) {
        String method = methods.map(c -> row.at(c.place())).orElse(DefaultDraft.OPEN_KEY);
        if (!method.isEmpty() && !row.at(sample).isEmpty() && materials.size() < MOST) {
          materials.add(Map.of("method", method, "key", row.at(sample)));
        }
      }
    }
    materials.removeIf(m -> m.values().stream().anyMatch(text -> text.indexOf('/') >= 0));
    return materials;
  }
}
