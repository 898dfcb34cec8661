package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.bench.Bench;
import org.quietline.bench.Method;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * The value of each result of one method, and the path to it. The repeatability behind a value is
 * that of the pairs of the same instrument and role taken at an earlier time, without those an
 * action took out: later results never change a value, only a recorded action can. From fewer than
 * {@link PriorPairs#FEWEST} pairs there is no limit but a published one. The pair is always the
 * first two readings, whatever was read after them.
 */
final class ReportedValues {
  private final Bench bench;
  private final Method method;
  private final List<Result> results;
  private final Map<Result, ReportedValue> values = new HashMap<>();

  private ReportedValues(Bench bench, Method method, List<Result> results) {
    this.bench = bench;
    this.method = method;
    this.results = results;
  }

  /** Computes nothing until a value is asked for. */
  static ReportedValues of(Bench bench, Method method, List<Result> inTime) {
    return new ReportedValues(bench, method, inTime);
  }

  static ReportedValues of(Bench bench, Method method) {
    return of(
        bench,
        method,
        bench.results().stream().filter(r -> r.method().equals(method.key())).toList());
  }

  /** The value of one of the results. */
  ReportedValue of(Result result) {
    if (values.isEmpty()) {
      compute();
    }
    ReportedValue value = values.get(result);
    if (value == null) {
      throw new IllegalArgumentException("no result of " + method.key() + ": " + result.origin());
    }
    return value;
  }

  /** What shares a repeatability. */
  private record Group(String instrument, Role role) {}

  private void compute() {
    Map<Group, PriorPairs> groups = new HashMap<>();
    for (Result result : results) {
      PriorPairs before =
          groups.computeIfAbsent(
              new Group(result.instrument(), result.role()), k -> new PriorPairs());
      before.moveTo(result.takenAt());
      values.put(
          result,
          numbers(result)
              .map(numbers -> RepeatRule.value(method, before, numbers))
              .orElseGet(() -> censored(result)));
      if (!bench.isExcluded(result)) {
        result.pair().ifPresent(before::add);
      }
    }
  }

  /** The readings that are numbers, missing ones left out; empty when one is censored. */
  private static Optional<List<BigDecimal>> numbers(Result result) {
    List<BigDecimal> numbers = new ArrayList<>();
    for (Reading reading : result.readings()) {
      if (reading instanceof Reading.Measured measured) {
        numbers.add(measured.value());
      } else if (!(reading instanceof Reading.Missing)) {
        return Optional.empty();
      }
    }
    return Optional.of(numbers);
  }

  private ReportedValue censored(Result result) {
    int numbers =
        (int) result.readings().stream().filter(r -> r instanceof Reading.Measured).count();
    return new ReportedValue(
        OptionalDouble.empty(),
        Path.CENSORED,
        numbers,
        0,
        method.replicates(),
        List.of(),
        Answer.cannotSay("a reading is only a bound"));
  }
}
