package org.quietline.assess;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.assess.Contradiction.PartExceedsWhole;
import org.quietline.bench.Check;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * Is a part of a sample ever larger than the whole? Held against each other are the results of one
 * product sample that are plain numbers, each part with the whole nearest in time.
 */
final class PartContradictions {
  /** A conversion of units may leave the last binary digit of equal values apart. */
  private static final double ROUNDING = 1e-12;

  private PartContradictions() {}

  static List<Contradiction> ask(Asking asking) {
    List<Contradiction> found = new ArrayList<>();
    for (Method part : asking.bench().settings().methods()) {
      Optional<Method> whole =
          asking.bench().settings().methods().stream()
              .filter(m -> part.partOf().filter(m.key()::equals).isPresent())
              .findFirst();
      if (whole.isPresent() && asking.isOn(Check.PART_EXCEEDS_WHOLE, part.key())) {
        part.unit()
            .factorTo(whole.get().unit())
            .ifPresent(f -> found.addAll(exceeding(asking, part, whole.get(), f.doubleValue())));
      }
    }
    return found;
  }

  private static List<Contradiction> exceeding(
      Asking asking, Method part, Method whole, double factor) {
    List<Contradiction> found = new ArrayList<>();
    ReportedValues parts = ReportedValues.of(asking.bench(), part);
    ReportedValues reported = ReportedValues.of(asking.bench(), whole);
    Map<String, List<Result>> wholes = Asking.by(Result::sample, samples(asking, whole, reported));
    for (Result one : samples(asking, part, parts)) {
      Optional<Result> other =
          wholes.getOrDefault(one.sample(), List.of()).stream()
              .min(Comparator.comparing(w -> Duration.between(w.takenAt(), one.takenAt()).abs()));
      if (other.isEmpty()) {
        continue;
      }
      double partValue = parts.of(one).value().orElseThrow() * factor;
      double wholeValue = reported.of(other.get()).value().orElseThrow();
      if (partValue > wholeValue * (1 + ROUNDING)) {
        found.add(
            new PartExceedsWhole(
                asking.about(Check.PART_EXCEEDS_WHOLE, one, other.get().origin()),
                one,
                partValue,
                other.get(),
                wholeValue));
      }
    }
    return found;
  }

  private static List<Result> samples(Asking asking, Method method, ReportedValues values) {
    return asking.bench().results().stream()
        .filter(r -> r.method().equals(method.key()))
        .filter(r -> r.role() == Role.PRODUCT || r.role() == Role.RETEST)
        .filter(r -> values.of(r).value().isPresent() && !asking.bench().isExcluded(r))
        .toList();
  }
}
