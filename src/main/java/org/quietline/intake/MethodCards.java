package org.quietline.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.quietline.bench.Unit;

/**
 * The ready-made method cards that come with the program, from {@code shared/methods}. A {@code
 * [[method]]} that names one takes its values; what the entry says itself goes before.
 */
final class MethodCards {
  /** Every card there is, in the order in which they are told. */
  static final List<String> NAMES =
      List.of("acid-number", "free-fatty-acid", "total-glycerin", "free-glycerin");

  private static final String CARD = "card";
  private static final String PART_OF = "part-of";
  private static final String UPPER = "product-upper-limit";
  private static final String LOWER = "product-lower-limit";

  private final List<JsonNode> methods;

  private MethodCards(List<JsonNode> methods) {
    this.methods = methods;
  }

  /** The cards as a tree of settings uses them. */
  static MethodCards in(JsonNode tree) {
    JsonNode list = tree.path("method");
    return new MethodCards(
        IntStream.range(0, list.isArray() ? list.size() : 0).mapToObj(list::get).toList());
  }

  /** The bytes of every card that is used, one after the other, each once. */
  byte[] bytesUsed() {
    Set<String> used = new LinkedHashSet<>(methods.stream().map(m -> textOf(m, CARD)).toList());
    return NAMES.stream()
        .filter(used::contains)
        .map(MethodCards::bytesOf)
        .reduce(new byte[0], Fingerprint::joined);
  }

  /** Puts the card's values under those of an entry that names a card. */
  void fill(Entry entry) throws Unusable {
    Optional<String> name = entry.text(CARD);
    if (name.isEmpty()) {
      return;
    }
    if (!NAMES.contains(name.get())) {
      throw new Unusable(
          CARD,
          name.get(),
          Excerpt.quoted(name.get())
              + " is no method card"
              + NearestName.of(name.get(), NAMES).map(n -> " (did you mean " + n + "?)").orElse("")
              + "; there are "
              + String.join(", ", NAMES)
              + ".");
    }
    ObjectNode card = treeOf(name.get());
    checkUnit(entry, card, name.get());
    Optional<String> unit = entry.text("unit");
    if (unit.isPresent() && !new Unit(unit.get()).isPlainMassFraction()) {
      card.remove("basis");
    }
    if (hasAnother(entry, card, UPPER) || hasAnother(entry, card, LOWER)) {
      card.remove("limit-source");
    }
    if (entry.at(PART_OF).isEmpty()) {
      wholeOf(card).ifPresentOrElse(whole -> card.put(PART_OF, whole), () -> card.remove(PART_OF));
    }
    entry.fillFrom(card);
  }

  private static boolean hasAnother(Entry entry, ObjectNode card, String limit) throws Unusable {
    Optional<BigDecimal> own = entry.number(limit);
    return own.isPresent()
        && !(card.has(limit) && card.path(limit).decimalValue().compareTo(own.get()) == 0);
  }

  /** A card's limit and decimals are for its own unit, and mean nothing in another one. */
  private static void checkUnit(Entry entry, ObjectNode card, String name) throws Unusable {
    String unit = textOf(card, "unit");
    String own = entry.at("unit").isPresent() ? entry.shown("unit") : unit;
    if (own.equals(unit) || own.startsWith(unit + " as ")) {
      return;
    }
    List<String> needed =
        Stream.of("decimals", UPPER)
            .filter(key -> card.has(key) && entry.at(key).isEmpty())
            .toList();
    if (!needed.isEmpty()) {
      throw new Unusable(
          "unit",
          own,
          "The card "
              + name
              + " is for "
              + unit
              + "; with another unit write "
              + String.join(" and ", needed)
              + " too.");
    }
  }

  /** The method of which a card's method measures a part, if the bench runs it. */
  private Optional<String> wholeOf(ObjectNode card) {
    String whole = textOf(card, PART_OF);
    if (whole.isEmpty() || methods.stream().anyMatch(m -> keyOf(m).equals(whole))) {
      return Optional.of(whole).filter(key -> !key.isEmpty());
    }
    List<JsonNode> made = methods.stream().filter(m -> textOf(m, CARD).equals(whole)).toList();
    return made.size() == 1 ? Optional.of(keyOf(made.get(0))) : Optional.empty();
  }

  private static String keyOf(JsonNode method) {
    return textOf(method, method.has("key") ? "key" : CARD);
  }

  private static String textOf(JsonNode node, String key) {
    return node.path(key).asText("");
  }

  /** What a card says. */
  static ObjectNode treeOf(String name) {
    try {
      return (ObjectNode) SettingsFile.TOML.readTree(bytesOf(name));
    } catch (IOException e) {
      throw new UncheckedIOException("the card " + name + " is not valid", e);
    }
  }

  private static byte[] bytesOf(String name) {
    try (InputStream in = MethodCards.class.getResourceAsStream("methods/" + name + ".toml")) {
      if (in == null) {
        throw new IllegalStateException("the program was built without the card " + name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
