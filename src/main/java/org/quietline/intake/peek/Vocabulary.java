package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Person;
import org.quietline.bench.Role;
import org.quietline.bench.Settings;
import org.quietline.bench.Unit;

/** The words a bench knows for a field: its keys, and the titles that stand for them. */
final class Vocabulary {
  private static final List<String> UNITS =
      List.of("% mass", "g/kg", "mg/g", "mg/kg", "ppm", "mg KOH/g");

  private final Optional<Settings> bench;

  Vocabulary(Optional<Settings> bench) {
    this.bench = bench;
  }

  boolean isKnown() {
    return bench.isPresent();
  }

  /** Keys with their titles; the titles of a key without one are the key. */
  Map<String, String> of(Field field) {
    Map<String, String> words = new LinkedHashMap<>();
    if (field == Field.ROLE) {
      Arrays.stream(Role.values()).forEach(r -> words.put(r.key(), r.key()));
    }
    if (field == Field.UNIT) {
      UNITS.forEach(u -> words.put(u, u));
    }
    bench.ifPresent(settings -> add(settings, field, words));
    return words;
  }

  private static void add(Settings settings, Field field, Map<String, String> words) {
    if (field == Field.METHOD) {
      settings.methods().forEach((Method m) -> words.put(m.key(), m.title()));
    } else if (field == Field.INSTRUMENT) {
      settings.instruments().forEach((Instrument i) -> words.put(i.key(), i.title()));
    } else if (field == Field.SAMPLE) {
      settings.materials().forEach((Material m) -> words.put(m.key(), m.key()));
    } else if (field == Field.UNIT) {
      settings.methods().forEach(m -> words.put(m.unit().symbol(), m.unit().symbol()));
    } else if (field == Field.OPERATOR) {
      settings.people().forEach((Person p) -> words.put(p.key(), p.name()));
    }
  }

  /** The key that a text is, or whose title it is, without regard to case. */
  Optional<String> keyOf(Field field, String text) {
    return of(field).entrySet().stream()
        .filter(e -> e.getKey().equalsIgnoreCase(text) || e.getValue().equalsIgnoreCase(text))
        .map(Map.Entry::getKey)
        .findFirst()
        .or(() -> field == Field.UNIT && converts(text) ? Optional.of(text) : Optional.empty());
  }

  /** Whether a text is a unit that converts to that of a method. */
  private boolean converts(String text) {
    return !text.isBlank()
        && bench.stream()
            .flatMap(settings -> settings.methods().stream())
            .anyMatch(method -> new Unit(text).factorTo(method.unit()).isPresent());
  }

  /** The keys a text may be short for, the likeliest first; where nothing is near, all of them. */
  List<String> candidates(Field field, String text) {
    Map<String, String> words = of(field);
    List<String> near = new ArrayList<>();
    words.forEach(
        (key, title) -> {
          if (isShortFor(text, key) || isShortFor(text, title)) {
            near.add(key);
          }
        });
    return near.isEmpty() ? List.copyOf(words.keySet()) : near;
  }

  /** Whether the letters of a text stand in this order in a name that begins alike. */
  private static boolean isShortFor(String text, String name) {
    String letters = letters(text);
    String whole = letters(name);
    if (letters.isEmpty() || whole.isEmpty() || letters.charAt(0) != whole.charAt(0)) {
      return false;
    }
    int at = 0;
    for (int i = 0; i < whole.length() && at < letters.length(); i++) {
      at += whole.charAt(i) == letters.charAt(at) ? 1 : 0;
    }
    return at == letters.length();
  }

  private static String letters(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\d]", "");
  }

  /** Which share of a column's different texts are words of a field. */
  double share(Field field, Column column) {
    List<String> distinct = List.copyOf(column.distinct());
    if (distinct.isEmpty() || distinct.size() > 200) {
      return 0;
    }
    long known = distinct.stream().filter(t -> keyOf(field, t).isPresent()).count();
    return (double) known / distinct.size();
  }

  boolean isMaterial(String sample) {
    return of(Field.SAMPLE).containsKey(sample);
  }
}
