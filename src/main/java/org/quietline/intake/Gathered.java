package org.quietline.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.quietline.intake.RowKind.Part;

/** The records taken in of one kind, each once. */
final class Gathered<T> {
  private final RowKind<T> kind;
  private final List<T> taken = new ArrayList<>();
  private final Map<Object, T> byKey = new HashMap<>();

  Gathered(RowKind<T> kind) {
    this.kind = kind;
  }

  RowKind<T> kind() {
    return kind;
  }

  List<T> taken() {
    return taken;
  }

  /**
   * Takes a record in unless it was met before.
   *
   * @return true when it was taken in, false when it is an exact copy
   * @throws Unusable when an earlier row says something else about the same thing
   */
  boolean add(T made) throws Unusable {
    T first = byKey.putIfAbsent(kind.keyOf(made), made);
    if (first == null) {
      taken.add(made);
      return true;
    }
    for (Part<T> part : kind.parts()) {
      String there = part.text().apply(first);
      String here = part.text().apply(made);
      if (!there.equals(here)) {
        throw conflict(part.name(), first, there, here);
      }
    }
    return false;
  }

  private Unusable conflict(String part, T first, String there, String here) {
    return new Unusable(
        part,
        here,
        "The same row stands in "
            + kind.originOf(first)
            + " with other content: "
            + part
            + " is "
            + shown(there)
            + " there and "
            + shown(here)
            + " here. The first one stays; correct the wrong one.");
  }

  private static String shown(String text) {
    return text.isEmpty() ? "empty" : Excerpt.quoted(text);
  }
}
