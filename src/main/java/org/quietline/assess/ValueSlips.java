package org.quietline.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import org.quietline.assess.Hypotheses.Hypothesis;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.What;

/**
 * Slips in whole results: a value far from what is expected that a factor, or an exchange with
 * another sample of the session, brings home.
 */
final class ValueSlips {
  /** So many results of a session nearest to what is expected are tried as partners. */
  private static final int NEIGHBOURS = 8;

  private final Witnesses witnesses;
  private final List<Hypothesis> hypotheses;

  ValueSlips(Witnesses witnesses, List<Hypothesis> hypotheses) {
    this.witnesses = witnesses;
    this.hypotheses = hypotheses;
  }

  /** A factor on the whole result. */
  Optional<Suspicion> inValue(Logged logged) {
    Optional<Witness> accuser =
        witnesses.accuser(logged).filter(w -> !witnesses.isCleared(logged, w));
    if (accuser.isEmpty()) {
      return Optional.empty();
    }
    List<Candidate> candidates =
        hypotheses.stream()
            .filter(h -> accuser.get().fits(logged.level() - h.shift()))
            .sorted(
                Comparator.comparingDouble(h -> accuser.get().apart(logged.level() - h.shift())))
            .map(
                h ->
                    new Candidate(
                        h.what(),
                        OptionalInt.empty(),
                        OptionalInt.empty(),
                        h.factor(),
                        OptionalDouble.of(logged.value() / h.factor())))
            .toList();
    return candidates.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Suspicion(
                logged, Optional.empty(), candidates, accuser.get().distanceOf(logged.level())));
  }

  /** Two results of a session that are both odd, and fit once exchanged. */
  List<Suspicion> bothExchanged(List<Logged> session) {
    return exchanged(session, witnesses::doubter, true);
  }

  /** A result far from what is expected that fits once exchanged with one that fits anyway. */
  List<Suspicion> oneExchanged(List<Logged> session) {
    return exchanged(session, witnesses::accuser, false);
  }

  private List<Suspicion> exchanged(
      List<Logged> session, Function<Logged, Optional<Witness>> against, boolean both) {
    List<Logged> byLevel =
        session.stream().sorted(Comparator.comparingDouble(Logged::level)).toList();
    double[] levels = byLevel.stream().mapToDouble(Logged::level).toArray();
    List<Suspicion> found = new ArrayList<>();
    for (Logged logged : session) {
      against
          .apply(logged)
          .flatMap(w -> exchange(logged, w, near(byLevel, levels, w), both))
          .ifPresent(found::add);
    }
    return found;
  }

  private static List<Logged> near(List<Logged> byLevel, double[] levels, Witness witness) {
    int found = Arrays.binarySearch(levels, witness.expected());
    int place = found < 0 ? -found - 1 : found;
    return byLevel.subList(
        Math.max(0, place - NEIGHBOURS / 2), Math.min(levels.length, place + NEIGHBOURS / 2));
  }

  /** A partner found, and how well both fit once exchanged. */
  private record Partner(Logged logged, double apart) {}

  private Optional<Suspicion> exchange(
      Logged logged, Witness against, List<Logged> near, boolean both) {
    return near.stream()
        .filter(other -> !other.result().sample().equals(logged.result().sample()))
        .filter(other -> against.fits(other.level()))
        .flatMap(other -> partner(logged, against, other, both).stream())
        .min(Comparator.comparingDouble(Partner::apart))
        .map(partner -> suspicion(logged, against, partner.logged(), both));
  }

  /** The other result as a partner, if what is expected of it fits the exchange. */
  private Optional<Partner> partner(Logged logged, Witness against, Logged other, boolean both) {
    double shift = logged.level() - other.level();
    List<Witness> about = witnesses.about(other);
    return about.stream()
        .filter(w -> w.notices(shift))
        .findFirst()
        .or(() -> about.stream().findFirst())
        .filter(w -> w.fits(logged.level()))
        .filter(w -> !both || w.doubts(other.level()))
        .map(
            w ->
                new Partner(
                    other, Math.hypot(w.apart(logged.level()), against.apart(other.level()))));
  }

  private static Suspicion suspicion(Logged logged, Witness against, Logged other, boolean both) {
    Logged first = both ? Suspicion.earlier(logged, other) : logged;
    Logged second = first.equals(logged) ? other : logged;
    Candidate candidate =
        new Candidate(
            What.SAMPLES_EXCHANGED,
            OptionalInt.empty(),
            OptionalInt.empty(),
            1,
            OptionalDouble.of(second.value()));
    return new Suspicion(
        first, Optional.of(second), List.of(candidate), against.distanceOf(logged.level()));
  }
}
