package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.Evidence;
import org.quietline.bench.Check;

/**
 * A slip before anybody was asked about it.
 *
 * @param logged the result
 * @param partner the other result, if two are concerned
 * @param candidates what it may be, the likeliest first, at least one
 * @param evidence why
 */
record Suspicion(
    Logged logged, Optional<Logged> partner, List<Candidate> candidates, Evidence evidence) {
  Suspicion {
    candidates = List.copyOf(candidates);
  }

  /** The same with further candidates. */
  Suspicion with(List<Candidate> more) {
    List<Candidate> all = new ArrayList<>(candidates);
    all.addAll(more);
    return new Suspicion(logged, partner, all, evidence);
  }

  /** Whether only samples of its kind speak against it. */
  boolean isAgainstItsKind() {
    return evidence instanceof Slip.Distance distance
        && (distance.source() == Slip.Source.SAME_KIND
            || distance.source() == Slip.Source.SAME_ROLE);
  }

  /** Its kind of sample and how far away it lies, the same for results that lie alike. */
  String sort() {
    return kindOf(logged) + "/" + candidates.get(0).factor();
  }

  static String kindOf(Logged logged) {
    return logged.result().role().key() + "/" + logged.kind();
  }

  Check check() {
    return candidates.get(0).what().check();
  }

  /** Of two results the one that was logged first, so that an id stays the same. */
  static Logged earlier(Logged one, Logged other) {
    int order = one.result().takenAt().compareTo(other.result().takenAt());
    if (order != 0) {
      return order < 0 ? one : other;
    }
    String here = one.result().sample() + " " + one.result().origin();
    String there = other.result().sample() + " " + other.result().origin();
    return here.compareTo(there) <= 0 ? one : other;
  }
}
