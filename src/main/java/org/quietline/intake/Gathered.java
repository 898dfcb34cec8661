package org.quietline.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.intake.RowKind.Part;

/** The records of one kind: those taken in, each once, and those that stand against one of them. */
final class Gathered<T> {

  private final RowKind<T> kind;
  private final List<Part<T>> parts;
  private final List<T> taken = new ArrayList<>();
  private final Map<Object, List<T>> rivals = new HashMap<>();
  private final List<Outcome.Against<T>> against = new ArrayList<>();
  private final Outcome<T> newlyTaken = new Outcome.Taken<>();

  private final Map<Long, Places> neighbourhoods = new HashMap<>();
  private long neighbourhood = Long.MIN_VALUE;
  private Places places = new Places();

  Gathered(RowKind<T> kind) {
    this.kind = kind;
    this.parts = kind.parts();
  }

  RowKind<T> kind() {
    return kind;
  }

  List<T> taken() {
    return taken;
  }

  /** The records that stand against one taken in, in the order in which they were met. */
  List<Outcome.Against<T>> against() {
    return against;
  }

  /** What became of a record. */
  sealed interface Outcome<T> {
    /** It is the first of its key. */
    record Taken<T>() implements Outcome<T> {}

    /** It is an exact copy of one taken in. */
    record Copy<T>(T first) implements Outcome<T> {}

    /** It says something else than the one taken in; the part is the first that differs. */
    record Against<T>(T first, T other, String part, String firstText, String text)
        implements Outcome<T> {}
  }

  /**
   * Takes a record in unless there is one of its key. What stands against it is remembered, so that
   * a copy of that is a copy, too.
   */
  Outcome<T> add(T made) {
    enter(kind.neighbourhoodOf(made));
    int hash = kind.keyHash(made);
    int place = places.start(hash);
    while (places.isTaken(place)) {
      if (places.hashAt(place) == hash) {
        T first = taken.get(places.recordAt(place));
        if (kind.isSameKey(first, made)) {
          return meet(first, made);
        }
      }
      place = places.next(place);
    }
    places.put(place, hash, taken.size());
    taken.add(made);
    return newlyTaken;
  }

  private void enter(long now) {
    if (now != neighbourhood || neighbourhoods.isEmpty()) {
      places = neighbourhoods.computeIfAbsent(now, n -> new Places());
      neighbourhood = now;
    }
  }

  private Outcome<T> meet(T first, T made) {
    Optional<Part<T>> difference = difference(first, made);
    if (difference.isEmpty()) {
      return new Outcome.Copy<>(first);
    }
    List<T> others = rivals.computeIfAbsent(kind.keyOf(made), k -> new ArrayList<>());
    for (T other : others) {
      if (difference(other, made).isEmpty()) {
        return new Outcome.Copy<>(other);
      }
    }
    others.add(made);
    Part<T> part = difference.get();
    Outcome.Against<T> found =
        new Outcome.Against<>(first, made, part.name(), part.text(first), part.text(made));
    against.add(found);
    return found;
  }

  private Optional<Part<T>> difference(T one, T other) {
    for (Part<T> part : parts) {
      if (!part.isEqual(one, other)) {
        return Optional.of(part);
      }
    }
    return Optional.empty();
  }
}
