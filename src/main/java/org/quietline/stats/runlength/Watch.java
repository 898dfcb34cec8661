package org.quietline.stats.runlength;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import org.quietline.stats.control.RunRule;

/**
 * What one side of a run rule remembers of the values before, as one number: the least that is
 * needed to tell when the rule is met.
 */
interface Watch {
  /**
   * Takes one value more; nothing remembered is 0.
   *
   * @param memory what is remembered
   * @param value any value of the new value's zone
   * @param direction 1 where it is above the value before, −1 where it is below, 0 for the first
   * @param place the number of the value from 0, or of any other that ends the same sets
   * @return what is remembered now, or {@link #met} where the rule is met
   */
  int next(int memory, double value, int direction, long place);

  /** The mark below zero that a rule is met, which goes on with this memory if it is let. */
  static int met(int memory) {
    return ~memory;
  }

  /**
   * What rules watch.
   *
   * @param rules the rules, and when they are looked at
   * @return the sides of each
   */
  static List<Watch> of(Chart.Rules rules) {
    return rules.rules().stream()
        .flatMap(rule -> of(rule).stream())
        .map(watch -> lookedAt(watch, rules.every()))
        .toList();
  }

  /**
   * The sizes of the sets that rules look at.
   *
   * @param rules the rules, and when they are looked at
   * @return the sizes; 1 where they are looked at after each value
   */
  static IntStream sets(Chart.Rules rules) {
    IntStream opposite =
        rules.rules().stream().filter(RunRule.Opposite.class::isInstance).mapToInt(RunRule::span);
    return IntStream.concat(IntStream.of(rules.every()), opposite);
  }

  /** Whether a value is the last of its set; sets are counted from place 0. */
  static boolean ends(long place, int set) {
    return Math.floorMod(place, set) == set - 1;
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

  /**
   * How far out a rule tells values apart, on both sides.
   *
   * @param rule the rule
   * @return the place, zero for the centre; none where it only compares values
   */
  static OptionalDouble zone(RunRule rule) {
    if (rule instanceof RunRule.Beyond beyond) {
      return OptionalDouble.of(beyond.zone());
    }
    if (rule instanceof RunRule.EitherSide either) {
      return OptionalDouble.of(either.zone());
    }
    if (rule instanceof RunRule.Opposite opposite) {
      return OptionalDouble.of(opposite.zone());
    }
    if (rule instanceof RunRule.Within within) {
      return OptionalDouble.of(within.zone());
    }
    if (rule instanceof RunRule.Outside outside) {
      return OptionalDouble.of(outside.zone());
    }
    return rule instanceof RunRule.SameSide ? OptionalDouble.of(0) : OptionalDouble.empty();
  }

  private static List<Watch> of(RunRule rule) {
    if (rule instanceof RunRule.Beyond beyond) {
      double zone = beyond.zone();
      return List.of(
          window(beyond.count(), beyond.of(), x -> x > zone),
          window(beyond.count(), beyond.of(), x -> x < -zone));
    }
    if (rule instanceof RunRule.EitherSide either) {
      return List.of(window(either.count(), either.of(), x -> Math.abs(x) > either.zone()));
    }
    if (rule instanceof RunRule.Opposite opposite) {
      return List.of(opposite(opposite.set(), opposite.zone()));
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
    return List.of(turns(rule.span(), rule instanceof RunRule.Steady));
  }

  private static Watch lookedAt(Watch watch, int every) {
    return (memory, value, direction, place) -> {
      int now = watch.next(memory, value, direction, place);
      return now < 0 && !ends(place, every) ? met(now) : now;
    };
  }

  private static Watch streak(int count, DoublePredicate in) {
    return (memory, value, direction, place) -> {
      if (!in.test(value)) {
        return 0;
      }
      return memory < count - 1 ? memory + 1 : met(count - 1);
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
    return (memory, value, direction, place) -> {
      boolean hit = in.test(value);
      boolean met = hit && Integer.bitCount(memory) + 1 >= count;
      int now = (memory << 1) | (hit ? 1 : 0);
      while (now != 0) {
        int age = 32 - Integer.numberOfLeadingZeros(now);
        if (age < of && Integer.bitCount(now) + of - age >= count) {
          break;
        }
        now ^= Integer.highestOneBit(now);
      }
      return met ? met(now) : now;
    };
  }

  /** Remembers which sides of a set have been seen, above in the lowest bit; none in a new set. */
  private static Watch opposite(int set, double zone) {
    return (memory, value, direction, place) -> {
      int side = value > zone ? 1 : value < -zone ? 2 : 0;
      boolean met = side != 0 && (memory & (3 - side)) != 0;
      int now = ends(place, set) ? 0 : memory | side;
      return met ? met(now) : now;
    };
  }

  /** Remembers how many steps the pattern has, and in the lowest bit whether the last was up. */
  private static Watch turns(int count, boolean onward) {
    return (memory, value, direction, place) -> {
      if (direction == 0) {
        return 0;
      }
      int up = direction > 0 ? 1 : 0;
      boolean goesOn = memory > 1 && (up == (memory & 1)) == onward;
      int steps = goesOn ? (memory >> 1) + 1 : 1;
      return steps == count - 1 ? met(2 * (count - 2) + up) : 2 * steps + up;
    };
  }
}
