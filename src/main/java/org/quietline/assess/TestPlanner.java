package org.quietline.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.StudentMixture;
import org.quietline.stats.mixed.LineOutlook;

/**
 * On which days the next control tests narrow the outlook most. Days are tried from tomorrow to the
 * last day on which a result can still change the decision: the last safe day where one is ahead,
 * else a fifth of the validity before expiry. One test a day; the best days are found by adding
 * them one at a time and then moving each as long as that helps.
 */
final class TestPlanner {
  /** How long before expiry a result still leaves time to act, as a share of the validity. */
  static final int TIME_TO_ACT = 5;

  private final LineOutlook.GroupLine line;
  private final LocalDate start;
  private final int today;
  private final int expiry;
  private final int last;
  private final OptionalDouble allowance;

  TestPlanner(
      LineOutlook.GroupLine line,
      LocalDate start,
      int today,
      int expiry,
      OptionalInt lastSafe,
      OptionalDouble allowance) {
    this.line = line;
    this.start = start;
    this.today = today;
    this.expiry = expiry;
    this.allowance = allowance;
    int inTime = expiry - Math.max(1, expiry / TIME_TO_ACT);
    int ahead = lastSafe.orElse(-1);
    this.last = ahead > today && ahead < expiry ? ahead : inTime;
  }

  /** The best days for a number of tests. */
  Answer<TestPlan> plan(int tests) {
    int free = last - today;
    if (free < tests) {
      return Answer.cannotSay(
          free <= 0
              ? "no day is left on which a result could still change what to do"
              : "only " + free + (free == 1 ? " day is" : " days are") + " left for tests");
    }
    List<Integer> days = new ArrayList<>();
    for (int i = 0; i < tests; i++) {
      days.add(bestBeside(days));
    }
    boolean moved = true;
    while (moved) {
      moved = false;
      for (int i = 0; i < tests; i++) {
        List<Integer> others = new ArrayList<>(days);
        int was = others.remove(i);
        int better = bestBeside(others);
        if (better != was && variance(with(others, better)) < variance(days) * (1 - 1e-9)) {
          days.set(i, better);
          moved = true;
        }
      }
    }
    return Answer.of(described(days));
  }

  private TestPlan described(List<Integer> days) {
    List<Integer> sorted = days.stream().sorted().toList();
    StudentMixture then = after(sorted);
    return new TestPlan(
        sorted.stream().map(d -> start.plusDays(d)).toList(),
        width(line.at(expiry)),
        width(then),
        width(after(evenly(days.size()))),
        allowance.isPresent()
            ? OptionalDouble.of(then.chanceBeyond(allowance.getAsDouble()))
            : OptionalDouble.empty());
  }

  private List<Integer> evenly(int tests) {
    List<Integer> days = new ArrayList<>();
    for (int i = 1; i <= tests; i++) {
      days.add(today + (int) Math.round((double) (last - today) * i / (tests + 1)));
    }
    return days;
  }

  private static double width(StudentMixture height) {
    Interval interval = height.interval(0.95);
    return interval.upper() - interval.lower();
  }

  private int bestBeside(List<Integer> days) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int day = today + 1; day <= last; day++) {
      double variance = days.contains(day) ? least : variance(with(days, day));
      if (variance < least) {
        least = variance;
        best = day;
      }
    }
    return best;
  }

  private static List<Integer> with(List<Integer> days, int day) {
    List<Integer> more = new ArrayList<>(days);
    more.add(day);
    return more;
  }

  private double variance(List<Integer> days) {
    return line.varianceAfter(expiry, days.stream().mapToDouble(Integer::doubleValue).toArray());
  }

  private StudentMixture after(List<Integer> days) {
    return line.after(expiry, days.stream().mapToDouble(Integer::doubleValue).toArray());
  }
}
