package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * One line of the coverage table: how often an interval held the truth in a seeded simulation.
 *
 * @param subject the class that makes the interval
 * @param what which interval, of what population and design
 * @param size the size of the sample, in words
 * @param nominal the stated level
 * @param covered the share of trials in which it held the truth
 * @param trials how many there were
 */
public record Coverage(
    Class<?> subject, String what, String size, double nominal, double covered, int trials) {
  private static final Queue<Coverage> ALL = new ConcurrentLinkedQueue<>();

  /**
   * How many trials to run: a short slice in the normal tests, the whole number in the profile
   * {@code coverage}.
   */
  public static int trials(int slice, int whole) {
    return Boolean.getBoolean("coverage.whole") ? whole : slice;
  }

  /**
   * Puts a case on the table and checks that the share that held the truth is from {@code least} to
   * {@code most}, give or take four of its own standard errors.
   */
  public static void check(
      Class<?> subject,
      String what,
      String size,
      double nominal,
      int held,
      int trials,
      double least,
      double most) {
    double share = (double) held / trials;
    ALL.add(new Coverage(subject, what, size, nominal, share, trials));
    double error = Math.sqrt(nominal * (1 - nominal) / trials);
    assertTrue(
        share >= least - 4 * error && share <= most + 4 * error,
        () ->
            String.format(
                Locale.ROOT,
                "%s, %s: held the truth in %.2f %% of %d trials, expected %.1f to %.1f %%",
                what,
                size,
                100 * share,
                trials,
                100 * least,
                100 * most));
  }

  static List<Coverage> all() {
    return ALL.stream()
        .sorted(
            Comparator.comparing((Coverage c) -> c.subject().getName())
                .thenComparing(Coverage::what)
                .thenComparing(Coverage::size))
        .toList();
  }
}
