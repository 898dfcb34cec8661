package org.quietline.assess;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.assess.ReportedValue.Basis;
import org.quietline.assess.ReportedValue.Comparison;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.assess.ReportedValue.Repeatability;
import org.quietline.bench.Method;
import org.quietline.bench.Method.PublishedRepeatability;

/**
 * The rule by which one result's readings become its value. Two readings that agree give their
 * mean; else one or two more are asked for, as the method's policy says, and all of them give their
 * mean when their range is within its critical range, else their median. Never the two closest of
 * three. Where the method asks for more than two readings, their mean if they agree, else their
 * median, and none further is asked for. Source: ISO 5725-6:1994, 5.2.2 and 5.2.3 (from memory).
 */
final class RepeatRule {
  private final Method method;
  private final PriorPairs before;
  private final List<BigDecimal> numbers;
  private final List<Comparison> comparisons = new ArrayList<>();
  private final Answer<Repeatability> repeatability;

  private RepeatRule(Method method, PriorPairs before, List<BigDecimal> numbers) {
    this.method = method;
    this.before = before;
    this.numbers = numbers;
    this.repeatability = repeatability();
  }

  /** The value of readings that are all numbers, judged by the pairs before them. */
  static ReportedValue value(Method method, PriorPairs before, List<BigDecimal> numbers) {
    return new RepeatRule(method, before, numbers).value();
  }

  private Answer<Repeatability> repeatability() {
    if (method.replicates() < 2) {
      return Answer.cannotSay("one reading makes a result, so there are no pairs");
    }
    if (numbers.size() < 2) {
      return Answer.cannotSay("fewer than two readings are numbers");
    }
    Answer<Repeatability> own = before.basis(middle(Math.min(numbers.size(), method.replicates())));
    return own.value().isEmpty() && method.published().isPresent()
        ? Answer.of(new Repeatability(Basis.PUBLISHED, before.size()))
        : own;
  }

  private ReportedValue value() {
    int taken = numbers.size();
    int wanted = method.replicates();
    if (taken == 0) {
      return reported(OptionalDouble.empty(), Path.NONE, 0, wanted);
    }
    if (taken == 1) {
      return mean(Path.SINGLE, 1, wanted);
    }
    int first = Math.min(taken, wanted);
    if (repeatability.value().isEmpty()) {
      return taken > wanted
          ? median(Path.NO_LIMIT, taken, wanted)
          : mean(Path.NO_LIMIT, taken, wanted);
    }
    boolean agree = agree(first);
    if (agree && taken > wanted) {
      return mean(Path.MORE_THAN_ASKED, first, wanted);
    }
    if (first > 2) {
      return agree ? mean(Path.MANY_AGREE, first, wanted) : median(Path.MANY_MEDIAN, first, wanted);
    }
    return agree ? mean(Path.TWO_AGREE, 2, wanted) : furtherReadings();
  }

  private ReportedValue furtherReadings() {
    if (method.replicates() > 2) {
      return mean(Path.TWO_DISAGREE, 2, method.replicates());
    }
    int asked = 2 + method.repeatPolicy().more();
    int used = Math.min(numbers.size(), asked);
    if (used == 2) {
      return mean(Path.TWO_DISAGREE, 2, asked);
    }
    boolean three = used == 3;
    return agree(used)
        ? mean(three ? Path.THREE_AGREE : Path.FOUR_AGREE, used, asked)
        : median(three ? Path.THREE_MEDIAN : Path.FOUR_MEDIAN, used, asked);
  }

  private boolean agree(int readings) {
    List<BigDecimal> sorted = numbers.subList(0, readings).stream().sorted().toList();
    double range = sorted.get(readings - 1).subtract(sorted.get(0)).doubleValue();
    Comparison comparison =
        method
            .published()
            .filter(p -> repeatability.value().get().basis() == Basis.PUBLISHED)
            .map(PublishedRepeatability::limit)
            .map(r -> CriticalRanges.published(readings, range, r.doubleValue()))
            .orElseGet(
                () -> CriticalRanges.estimated(readings, range, before.at(middle(readings))));
    comparisons.add(comparison);
    return comparison.agrees();
  }

  private ReportedValue mean(Path path, int used, int asked) {
    BigDecimal sum = numbers.subList(0, used).stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    double mean = sum.divide(BigDecimal.valueOf(used), MathContext.DECIMAL64).doubleValue();
    return reported(OptionalDouble.of(mean), path, used, asked);
  }

  private ReportedValue median(Path path, int used, int asked) {
    return reported(OptionalDouble.of(middle(used)), path, used, asked);
  }

  /** The median of the first readings: also their level, which one wild reading cannot move far. */
  private double middle(int readings) {
    List<BigDecimal> sorted = numbers.subList(0, readings).stream().sorted().toList();
    int middle = readings / 2;
    return readings % 2 == 1
        ? sorted.get(middle).doubleValue()
        : sorted.get(middle - 1).add(sorted.get(middle)).doubleValue() / 2;
  }

  private ReportedValue reported(OptionalDouble value, Path path, int used, int asked) {
    return new ReportedValue(value, path, numbers.size(), used, asked, comparisons, repeatability);
  }
}
