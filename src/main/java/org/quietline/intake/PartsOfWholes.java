package org.quietline.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import org.quietline.bench.Method;

/** Whether each {@code part-of} names a method whose results can be held against its own. */
final class PartsOfWholes {
  private static final String KEY = "part-of";
  private static final String NOT_USED = " It was not used; the rest of the method was.";

  private PartsOfWholes() {}

  /** Reports what cannot be used; only once all methods are read is it known which there are. */
  static void check(JsonNode entries, Known<Method> methods, SettingsNotes notes) {
    for (int i = 0; i < entries.size(); i++) {
      Optional<Method> part = methods.get(entries.get(i).path("key").asText());
      String path = "method[" + i + "]." + KEY;
      part.flatMap(p -> p.partOf().flatMap(whole -> problem(p, whole, methods)))
          .ifPresent(
              sentence ->
                  notes.add(
                      path, KEY, part.flatMap(Method::partOf).orElse(""), sentence + NOT_USED));
    }
  }

  private static Optional<String> problem(Method part, String whole, Known<Method> methods) {
    Optional<Method> other = methods.get(whole);
    if (other.isEmpty()) {
      return Optional.of(
          "part-of names "
              + Excerpt.quoted(whole)
              + ", which is no method of this bench"
              + NearestName.hint(whole, methods.keys())
              + ".");
    }
    return part.unit().factorTo(other.get().unit()).isPresent()
        ? Optional.empty()
        : Optional.of(
            "part-of names "
                + Excerpt.quoted(whole)
                + ", whose unit "
                + other.get().unit()
                + " the unit "
                + part.unit()
                + " does not convert to.");
  }
}
