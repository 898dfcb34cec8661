package org.quietline.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import org.quietline.assess.PairedAgreement.Point;
import org.quietline.assess.PairedComparison.Intervals;
import org.quietline.assess.PairedComparison.Kind;
import org.quietline.assess.PairedComparison.Verdict;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;
import org.quietline.stats.compare.Equivalence;
import org.quietline.stats.compare.MeanTest;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.sample.Summary;

/** Do instruments, reagent lots, people and outside laboratories find the same? */
final class PairedComparisons {
  /** More samples than these are not asked for: the two are not alike enough. */
  private static final int MOST = 1000;

  private static final double ONE_SIDED = 0.05;

  /** Differences of decimals scatter by so much of their level from rounding in the machine. */
  private static final double ROUNDING = 1e-9;

  private PairedComparisons() {}

  /** All comparisons with at least one sample, laboratories first. */
  static List<PairedComparison> ask(Records records, List<OutsideDifference> outside) {
    List<PairedComparison> found = new ArrayList<>();
    Map<String, List<OutsideDifference>> laboratories = new LinkedHashMap<>();
    outside.forEach(
        d ->
            laboratories
                .computeIfAbsent(d.instrument() + "\n" + d.laboratory(), k -> new ArrayList<>())
                .add(d));
    for (List<OutsideDifference> own : laboratories.values()) {
      found.add(
          compared(
              records.method(),
              Kind.LABORATORY,
              own.get(0).instrument(),
              own.get(0).laboratory(),
              own.stream().map(d -> new Point(d.own(), d.outside())).toList()));
    }
    found.addAll(among(records, Kind.INSTRUMENT, r -> Optional.of(r.instrument()), r -> ""));
    found.addAll(among(records, Kind.REAGENT_LOT, Result::reagentLot, Result::instrument));
    found.addAll(among(records, Kind.PERSON, Result::operator, Result::instrument));
    return found;
  }

  /** Samples whose results differ in one thing and are alike in another. */
  private static List<PairedComparison> among(
      Records records,
      Kind kind,
      Function<Result, Optional<String>> differs,
      Function<Result, String> alike) {
    Map<String, Map<String, List<Double>>> samples = new LinkedHashMap<>();
    for (Result result : records.results()) {
      boolean tested = result.role() == Role.PRODUCT || result.role() == Role.RETEST;
      if (tested && records.counts(result) && differs.apply(result).isPresent()) {
        samples
            .computeIfAbsent(alike.apply(result) + "\n" + result.sample(), k -> new TreeMap<>())
            .computeIfAbsent(differs.apply(result).get(), k -> new ArrayList<>())
            .add(records.value(result).orElseThrow());
      }
    }
    Map<List<String>, List<Point>> pairs = new LinkedHashMap<>();
    for (Map<String, List<Double>> ways : samples.values()) {
      List<String> keys = List.copyOf(ways.keySet());
      for (int i = 0; i < keys.size(); i++) {
        for (int j = i + 1; j < keys.size(); j++) {
          pairs
              .computeIfAbsent(List.of(keys.get(i), keys.get(j)), k -> new ArrayList<>())
              .add(new Point(mean(ways, keys.get(i)), mean(ways, keys.get(j))));
        }
      }
    }
    return pairs.entrySet().stream()
        .map(
            e ->
                compared(
                    records.method(), kind, e.getKey().get(0), e.getKey().get(1), e.getValue()))
        .toList();
  }

  private static double mean(Map<String, List<Double>> ways, String key) {
    return ways.getOrDefault(key, List.of()).stream()
        .mapToDouble(Double::doubleValue)
        .average()
        .orElseThrow();
  }

  /** One comparison of samples, of which there is at least one. */
  static PairedComparison compared(
      Method method, Kind kind, String one, String other, List<Point> points) {
    double level = points.stream().mapToDouble(Point::level).average().orElseThrow();
    double[] differences = points.stream().mapToDouble(Point::difference).toArray();
    OptionalDouble margin =
        method.allowance().map(a -> OptionalDouble.of(a.at(level))).orElse(OptionalDouble.empty());
    int n = differences.length;
    double mean = Arrays.stream(differences).average().orElseThrow();
    if (n < 2 || Summary.of(differences).deviation() <= ROUNDING * Math.abs(level)) {
      String why =
          n < 2 ? "needs 2 samples, has 1" : "the differences are all alike, to the last digit";
      return new PairedComparison(
          kind,
          one,
          other,
          n,
          mean,
          0,
          Answer.cannotSay(why),
          margin,
          Answer.cannotSay(why),
          OptionalInt.empty(),
          Answer.cannotSay(why));
    }
    MeanTest test = MeanTest.oneSample(Summary.of(differences), 0);
    double deviation = Summary.of(differences).deviation();
    return new PairedComparison(
        kind,
        one,
        other,
        n,
        mean,
        deviation,
        Answer.of(
            new Intervals(
                interval(mean, deviation, n, 0.025), interval(mean, deviation, n, ONE_SIDED))),
        margin,
        margin.isPresent()
            ? Answer.of(verdict(new Equivalence(test, margin.getAsDouble())))
            : Answer.cannotSay("no allowable-bias is set for this method"),
        margin.isPresent() ? needed(mean, deviation, margin.getAsDouble()) : OptionalInt.empty(),
        PairedAgreements.of(points));
  }

  private static Verdict verdict(Equivalence tests) {
    return switch (tests.at(ONE_SIDED)) {
      case EQUIVALENT -> Verdict.ALIKE;
      case DIFFERENT -> Verdict.DIFFERENT;
      case UNDECIDED -> Verdict.UNDECIDED;
    };
  }

  private static Interval interval(double mean, double deviation, int n, double tail) {
    double half = Student.exceededWith(tail, n - 1.0) * deviation / Math.sqrt(n);
    return new Interval(mean - half, mean + half);
  }

  /** The fewest samples whose 90 % interval would lie within the margin. */
  private static OptionalInt needed(double mean, double deviation, double margin) {
    if (!isWithin(mean, deviation, margin, MOST)) {
      return OptionalInt.empty();
    }
    int tooFew = 1;
    int enough = MOST;
    while (enough - tooFew > 1) {
      int n = (tooFew + enough) / 2;
      if (isWithin(mean, deviation, margin, n)) {
        enough = n;
      } else {
        tooFew = n;
      }
    }
    return OptionalInt.of(enough);
  }

  private static boolean isWithin(double mean, double deviation, double margin, int n) {
    Interval interval = interval(mean, deviation, n, ONE_SIDED);
    return interval.lower() >= -margin && interval.upper() <= margin;
  }
}
