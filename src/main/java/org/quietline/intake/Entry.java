package org.quietline.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;

/**
 * One table of {@code bench.toml}, such as one {@code [[method]]}. Every key that is asked for
 * counts as known; {@link #noteUnknownKeys()} reports the others.
 */
final class Entry {
  /** A number of more digits or zeros than this is a slip, and would not fit on a page. */
  private static final int MOST_DIGITS = 40;

  private final String kind;
  private final String path;
  private JsonNode node;
  private final SettingsNotes notes;
  private final Set<String> asked = new LinkedHashSet<>();

  Entry(String kind, String path, JsonNode node, SettingsNotes notes) {
    this.kind = kind;
    this.path = path;
    this.node = node;
    this.notes = notes;
  }

  /** Puts values under those of the entry: what it says itself goes before. */
  void fillFrom(ObjectNode defaults) {
    ObjectNode filled = defaults.deepCopy();
    node.properties().forEach(own -> filled.set(own.getKey(), own.getValue()));
    node = filled;
  }

  String path() {
    return path;
  }

  /** The line on which the entry begins. */
  int line() {
    return notes.line(path);
  }

  String pathOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** What stands at a key, as text, whatever its type. */
  String shown(String key) {
    return at(key).map(Entry::show).orElse("");
  }

  Optional<JsonNode> at(String key) {
    asked.add(key);
    JsonNode value = node.path(key);
    return value.isMissingNode() || value.isNull() ? Optional.empty() : Optional.of(value);
  }

  Optional<String> text(String key) throws Unusable {
    Optional<JsonNode> value = at(key);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    if (!value.get().isTextual()) {
      throw wrong(key, "it must be text in quotes");
    }
    String text = Excerpt.strip(value.get().textValue());
    if (text.isEmpty()) {
      throw new Unusable(key, "", key + " is empty; write it or take the line out.");
    }
    return Optional.of(text);
  }

  String needText(String key) throws Unusable {
    return text(key).orElseThrow(() -> missing(key));
  }

  Optional<BigDecimal> number(String key) throws Unusable {
    Optional<JsonNode> value = at(key);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    JsonNode v = value.get();
    if (!v.isNumber() || v.isDouble() || v.isFloat()) {
      throw wrong(key, "it must be a number such as 0.012, without quotes");
    }
    BigDecimal number = v.decimalValue();
    if (number.precision() > MOST_DIGITS || Math.abs((long) number.scale()) > MOST_DIGITS) {
      throw wrong(key, "it must be a number of at most " + MOST_DIGITS + " digits");
    }
    return Optional.of(number);
  }

  OptionalInt whole(String key) throws Unusable {
    Optional<JsonNode> value = at(key);
    if (value.isEmpty()) {
      return OptionalInt.empty();
    }
    if (!value.get().isIntegralNumber() || !value.get().canConvertToInt()) {
      throw wrong(key, "it must be a whole number, without quotes");
    }
    return OptionalInt.of(value.get().intValue());
  }

  /** Yes or no. */
  Optional<Boolean> flag(String key) throws Unusable {
    Optional<JsonNode> value = at(key);
    if (value.isPresent() && !value.get().isBoolean()) {
      throw wrong(key, "it must be true or false, without quotes");
    }
    return value.map(JsonNode::booleanValue);
  }

  Optional<LocalDate> date(String key) throws Unusable {
    Optional<JsonNode> value = at(key);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    try {
      if (value.get().isTextual()) {
        return Optional.of(LocalDate.parse(value.get().textValue()));
      }
    } catch (DateTimeParseException e) {
      // Told below with every other value that is no date.
    }
    throw wrong(key, "it must be a day that exists, written like 2026-01-05");
  }

  LocalDate needDate(String key) throws Unusable {
    return date(key).orElseThrow(() -> missing(key));
  }

  /** A list of texts; empty when the key is absent. */
  Optional<List<String>> words(String key) throws Unusable {
    Optional<JsonNode> value = at(key);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    List<String> words = new ArrayList<>();
    boolean usable = value.get().isArray();
    for (JsonNode item : value.get()) {
      usable &= item.isTextual();
      words.add(item.asText());
    }
    if (!usable) {
      throw wrong(key, "it must be a list of texts, such as [\"one\", \"two\"]");
    }
    return Optional.of(words);
  }

  Unusable missing(String key) {
    List<String> present = node.properties().stream().map(Map.Entry::getKey).toList();
    String meant =
        NearestName.within(1, key, present).map(k -> " (is " + k + " meant?)").orElse("");
    return new Unusable(
        key, "", "The " + kind + " has no " + key + meant + "; write a line " + key + " = ….");
  }

  Unusable wrong(String key, String wanted) {
    String shown = shown(key);
    String value = node.path(key).isTextual() ? Excerpt.quoted(shown) : Excerpt.of(shown);
    return new Unusable(key, shown, key + " is " + value + "; " + wanted + ".");
  }

  /** Makes the record; what its constructor refuses is told at the key its message begins with. */
  <T> T build(Supplier<T> maker) throws Unusable {
    try {
      return maker.get();
    } catch (IllegalArgumentException e) {
      String message = String.valueOf(e.getMessage());
      String first = message.split("[ ,]", 2)[0];
      String field = asked.contains(first) ? first : kind;
      throw new Unusable(field, shown(field), message + "; mend it.");
    }
  }

  /** Reports every key that nobody asked for: a mistyped limit must not be lost in silence. */
  void noteUnknownKeys() {
    Collection<String> known = List.copyOf(asked);
    for (Map.Entry<String, JsonNode> property : node.properties()) {
      String key = property.getKey();
      if (!known.contains(key)) {
        notes.add(
            pathOf(key),
            key,
            show(property.getValue()),
            Excerpt.quoted(key)
                + " is not a setting of "
                + withArticle(kind)
                + NearestName.hint(key, known)
                + ". It was not used; the rest of the "
                + kind
                + " was.");
      }
    }
  }

  void note(String key, String sentences) {
    notes.add(pathOf(key), key, shown(key), sentences);
  }

  static String withArticle(String kind) {
    return (kind.startsWith("i") ? "an " : "a ") + kind;
  }

  private static String show(JsonNode value) {
    return value.isValueNode() ? value.asText() : value.toString();
  }
}
