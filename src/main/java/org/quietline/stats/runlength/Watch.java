package org.quietline.stats.runlength;

import java.util.List;
import java.util.function.DoublePredicate;
import org.quietline.stats.control.RunRule;

/**
 * What one side of a run rule remembers of the values before, as one number: the least that is
 * needed to tell when the rule is met.
 */
interface Watch {
  /** In place of a memory: the rule is met. */
  int MET = -1;

  /**
   * Takes one value more; nothing remembered is 0.
   *
   * @param memory what is remembered
   * @param value any value of the new value's zone
   * @param direction 1 where it is above the value before, −1 where it is below, 0 for the first
   * @return what is remembered now, or {@link #MET}
   */
  int next(int memory, double value, int direction);

  /**
   * A rule as what it watches.
   *
   * @param rule the rule
   * @return its sides
   */
  static List<Watch> of(RunRule rule) {
    if (rule instanceof RunRule.Beyond beyond) {
      double zone = beyond.zone();
      return List.of(
          window(beyond.count(), beyond.of(), x -> x > zone),
          window(beyond.count(), beyond.of(), x -> x < -zone));
    }
    if (rule instanceof RunRule.SameSide side) {
      return List.of(streak(side.count(), x -> x > 0), streak(side.count(), x -> x < 0));
    }
    if (rule instanceof RunRule.Within within) {
      return List.of(streak(within.count(), x -> Math.abs(x) < within.zone()));
    }
    if (rule instanceof RunRule.Outside outside) {
      return List.of(streak(outside.count(), x -> Math.abs(x) > outside.zone()));
    }
    if (rule instanceof RunRule.Steady || rule instanceof RunRule.Alternating) {
      return List.of(turns(rule.span(), rule instanceof RunRule.Steady));
    }
    throw new IllegalArgumentException("the run length of this rule is not known: " + rule);
  }

  /**
   * Whether a rule compares values with each other and not with zones.
   *
   * @param rule the rule
   * @return true for values that go steadily one way or up and down in turn
   */
  static boolean comparesValues(RunRule rule) {
    return rule instanceof RunRule.Steady || rule instanceof RunRule.Alternating;
  }

  private static Watch streak(int count, DoublePredicate in) {
    return (memory, value, direction) -> {
      int now = in.test(value) ? memory + 1 : 0;
      return now == count ? MET : now;
    };
  }

  /**
   * So many of the latest values: remembers which of them, newest in the lowest bit, and forgets
   * those that can take no part in a pattern any more.
   */
  private static Watch window(int count, int of, DoublePredicate in) {
    if (count == of) {
      return streak(count, in);
    }
    return (memory, value, direction) -> {
      boolean hit = in.test(value);
      if (hit && Integer.bitCount(memory) + 1 >= count) {
        return MET;
      }
      int now = (memory << 1) | (hit ? 1 : 0);
      while (now != 0) {
        int age = 32 - Integer.numberOfLeadingZeros(now);
        if (age < of && Integer.bitCount(now) + of - age >= count) {
          break;
        }
        now ^= Integer.highestOneBit(now);
      }
      return now;
    };
  }

  /** Remembers how many steps the pattern has, and in the lowest bit whether the last was up. */
  private static Watch turns(int count, boolean onward) {
    return (memory, value, direction) -> {
      if (direction == 0) {
        return 0;
      }
      int up = direction > 0 ? 1 : 0;
      boolean goesOn = memory > 1 && (up == (memory & 1)) == onward;
      int steps = goesOn ? (memory >> 1) + 1 : 1;
      return steps == count - 1 ? MET : 2 * steps + up;
    };
  }
}
