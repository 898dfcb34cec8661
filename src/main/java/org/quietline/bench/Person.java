package org.quietline.bench;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Someone who works at the bench.
 *
 * @param key the sign used in the operator column
 * @param name the name as printed
 * @param may what the person is authorised to do: {@code test}, {@code review}, {@code release}
 * @param from the first day of that authorisation, if given
 */
public record Person(String key, String name, List<String> may, Optional<LocalDate> from) {
  /** Copies the list. */
  public Person {
    Checks.text("key", key);
    Checks.text("name", name);
    may = List.copyOf(may);
  }
}
