package org.quietline.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.assess.Hypotheses.Hypothesis;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.What;

/**
 * Slips in one reading: readings disagree, and a factor on one of them, or an exchange with a
 * reading of another result of the session, makes them agree.
 */
final class ReadingSlips {
  /** So many results of a session with about the same mean are tried as partners. */
  private static final int NEIGHBOURS = 4;

  private final Witnesses witnesses;
  private final Agreement agreement;
  private final List<Hypothesis> hypotheses;

  ReadingSlips(Witnesses witnesses, MethodLog log, List<Hypothesis> hypotheses) {
    this.witnesses = witnesses;
    this.agreement = new Agreement(log);
    this.hypotheses = hypotheses;
  }

  /** A candidate with how far the mended value lies from what is expected. */
  private record Mended(Candidate candidate, double apart, boolean doubted) {}

  boolean isBroken(Logged logged) {
    return agreement.isBroken(logged);
  }

  /** A factor on one reading of a result whose readings disagree. */
  Optional<Suspicion> inOneReading(Logged logged) {
    List<Mended> mended = new ArrayList<>();
    for (int i = 0; i < logged.readings().size(); i++) {
      for (Hypothesis hypothesis : hypotheses) {
        List<Double> readings = new ArrayList<>(logged.readings());
        double meant = readings.get(i) - hypothesis.shift();
        readings.set(i, meant);
        if (agreement.isSound(readings, logged.digit())) {
          Candidate candidate =
              new Candidate(
                  hypothesis.what(),
                  OptionalInt.of(i + 1),
                  OptionalInt.empty(),
                  hypothesis.factor(),
                  OptionalDouble.of(logged.numbers().get(i) / hypothesis.factor()));
          mended.add(mended(candidate, logged, Logged.mean(readings)));
        }
      }
    }
    return best(mended).flatMap(candidates -> suspicion(logged, Optional.empty(), candidates));
  }

  private Mended mended(Candidate candidate, Logged logged, double level) {
    Optional<Witness> witness = witnesses.about(logged).stream().findFirst();
    return new Mended(
        candidate,
        witness.map(w -> w.apart(level)).orElse(0.0),
        witness.filter(w -> w.accuses(level)).isPresent());
  }

  /** The candidates that nothing else speaks against, or all where something does against each. */
  private static Optional<List<Candidate>> best(List<Mended> mended) {
    boolean allDoubted = mended.stream().allMatch(Mended::doubted);
    List<Candidate> candidates =
        mended.stream()
            .filter(m -> allDoubted || !m.doubted())
            .sorted(Comparator.comparingDouble(Mended::apart))
            .map(Mended::candidate)
            .toList();
    return candidates.isEmpty() ? Optional.empty() : Optional.of(candidates);
  }

  private Optional<Suspicion> suspicion(
      Logged logged, Optional<Logged> partner, List<Candidate> candidates) {
    int reading = candidates.get(0).reading().orElse(1) - 1;
    double other = logged.readings().get(reading == 0 ? 1 : 0);
    return agreement
        .about(other, logged.digit(), other)
        .map(w -> w.distanceOf(logged.readings().get(reading)))
        .map(distance -> new Suspicion(logged, partner, candidates, distance));
  }

  /** Pairs of a session that agree once a reading of each has changed places. */
  List<Suspicion> exchanged(List<Logged> session) {
    List<Logged> broken =
        session.stream()
            .filter(l -> l.readings().size() == 2)
            .filter(l -> agreement.isDoubtful(l))
            .sorted(Comparator.comparingDouble(l -> Logged.mean(l.readings())))
            .toList();
    List<Suspicion> found = new ArrayList<>();
    for (int i = 0; i < broken.size(); i++) {
      for (int j = i + 1; j < Math.min(broken.size(), i + 1 + NEIGHBOURS); j++) {
        exchanged(broken.get(i), broken.get(j)).ifPresent(found::add);
      }
    }
    return found;
  }

  private Optional<Suspicion> exchanged(Logged one, Logged other) {
    Logged first = Suspicion.earlier(one, other);
    Logged second = first.equals(one) ? other : one;
    if (first.result().sample().equals(second.result().sample())) {
      return Optional.empty();
    }
    List<Mended> mended = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 2; j++) {
        List<Double> a = new ArrayList<>(first.readings());
        List<Double> b = new ArrayList<>(second.readings());
        double left = a.set(i, b.get(j));
        b.set(j, left);
        if (agreement.isSound(a, first.digit()) && agreement.isSound(b, second.digit())) {
          Candidate candidate =
              new Candidate(
                  What.READINGS_EXCHANGED,
                  OptionalInt.of(i + 1),
                  OptionalInt.of(j + 1),
                  1,
                  OptionalDouble.of(second.numbers().get(j)));
          Mended here = mended(candidate, first, Logged.mean(a));
          Mended there = mended(candidate, second, Logged.mean(b));
          mended.add(
              new Mended(
                  candidate,
                  Math.hypot(here.apart(), there.apart()),
                  here.doubted() || there.doubted()));
        }
      }
    }
    return best(mended).flatMap(c -> suspicion(first, Optional.of(second), c));
  }
}
