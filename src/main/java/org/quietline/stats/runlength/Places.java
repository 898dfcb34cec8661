package org.quietline.stats.runlength;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where values stand in the sets that rules look at, as far as it makes a difference: which of the
 * sets a value ends. All sets begin together every so many values.
 */
final class Places {
  private static final int LONGEST_CYCLE = 10_000;

  private final int[] kinds;
  private final long[] examples;

  private Places(int[] kinds, long[] examples) {
    this.kinds = kinds;
    this.examples = examples;
  }

  /**
   * The places in sets of some sizes.
   *
   * @param sets the sizes
   * @return the places, or nothing where the sets begin together too seldom
   */
  static Optional<Places> of(int... sets) {
    long cycle = 1;
    for (int set : sets) {
      cycle = leastCommonMultiple(cycle, set);
      if (cycle > LONGEST_CYCLE) {
        return Optional.empty();
      }
    }
    List<List<Boolean>> known = new ArrayList<>();
    int[] kinds = new int[(int) cycle];
    long[] examples = new long[kinds.length];
    for (int place = 0; place < kinds.length; place++) {
      int at = place;
      List<Boolean> ends = Arrays.stream(sets).mapToObj(set -> Watch.ends(at, set)).toList();
      if (!known.contains(ends)) {
        examples[known.size()] = place;
        known.add(ends);
      }
      kinds[place] = known.indexOf(ends);
    }
    return Optional.of(new Places(kinds, Arrays.copyOf(examples, known.size())));
  }

  /** After how many values all sets begin together again. */
  int cycle() {
    return kinds.length;
  }

  /** How many kinds of places there are. */
  int kinds() {
    return examples.length;
  }

  /** The kind of a place, counted from 0. */
  int kind(long place) {
    return kinds[(int) (place % kinds.length)];
  }

  /** A place of a kind. */
  long example(int kind) {
    return examples[kind];
  }

  /** The smallest number that is a multiple of both, which are above zero. */
  static long leastCommonMultiple(long a, long b) {
    return a / BigInteger.valueOf(a).gcd(BigInteger.valueOf(b)).longValue() * b;
  }
}
