package org.quietline.intake;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The entries of one kind that the settings name: those that can be used, and those that were set
 * aside, so that a row that needs one of them can say why it is set aside too.
 */
final class Known<T> {
  private final String kind;
  private final Map<String, T> usable = new LinkedHashMap<>();
  private final Map<String, String> refused = new LinkedHashMap<>();

  /** Makes an empty register of a kind, such as {@code method}. */
  Known(String kind) {
    this.kind = kind;
  }

  void add(String key, T entry) {
    usable.put(key, entry);
  }

  void refuse(String key, long line, String sentence) {
    refused.putIfAbsent(
        key, "its entry in bench.toml, line " + line + ", was set aside: " + sentence);
  }

  Optional<T> get(String key) {
    return Optional.ofNullable(usable.get(key));
  }

  Collection<String> keys() {
    return usable.keySet();
  }

  List<T> entries() {
    return List.copyOf(usable.values());
  }

  /** Why an entry was set aside, as the end of a sentence with its full stop. */
  Optional<String> whyRefused(String key) {
    return Optional.ofNullable(refused.get(key));
  }

  /** The entry a field names, or the reason why there is none. */
  T need(String field, String key) throws Unusable {
    T found = usable.get(key);
    if (found == null) {
      throw new Unusable(field, key, whyUnknown(key));
    }
    return found;
  }

  private String whyUnknown(String key) {
    return whyRefused(key)
        .map(why -> Excerpt.quoted(key) + " cannot be used: " + why)
        .orElseGet(
            () ->
                Excerpt.quoted(key)
                    + " is no "
                    + kind
                    + " of this bench"
                    + NearestName.hint(key, usable.keySet())
                    + ".");
  }
}
