package org.quietline.stats;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * One line of the evidence table: what was calculated, what it was held to, and how well it agrees.
 *
 * @param subject the class that calculated it
 * @param what what was calculated, in words
 * @param source the id of the file in {@code shared/reference}, which names the source; for the
 *     project's own second opinion, what it is
 * @param kind where the expected figure is from
 * @param expected the expected figure as printed
 * @param got the figure the program gives
 * @param digits how many decimal digits agree
 */
public record Evidence(
    Class<?> subject,
    String what,
    String source,
    Kind kind,
    String expected,
    double got,
    double digits) {

  /** Where an expected figure is from. */
  public enum Kind {
    /** Certified by a standards body to many digits. */
    CERTIFIED("certified"),
    /** Typed from a published page or table that was at hand. */
    PUBLISHED("published"),
    /** Published, typed from memory and computed again. */
    RECALLED("published, recalled"),
    /** Computed with a general-purpose library that shares no code with the program. */
    COMPUTED("outside library"),
    /** Nothing from outside: a slow second calculation in the tests. */
    OWN("own second opinion");

    private final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  private static final Queue<Evidence> ALL = new ConcurrentLinkedQueue<>();

  static void record(Evidence line) {
    ALL.add(line);
  }

  /**
   * Holds a result to a slow second calculation of our own, within a relative tolerance, and puts
   * the case on the table, where it says that nothing from outside stands behind it.
   */
  public static void own(
      Class<?> subject, String what, String how, double expected, double got, double tolerance) {
    record(
        new Evidence(
            subject,
            what,
            how,
            Kind.OWN,
            String.format(Locale.ROOT, "%.10g", expected),
            got,
            Digits.agreeing(got, expected)));
    Digits.assertRelative(expected, got, tolerance, what);
  }

  /** All lines so far, in the order of the packages. */
  static List<Evidence> all() {
    return ALL.stream()
        .distinct()
        .sorted(
            Comparator.comparing((Evidence e) -> e.subject().getName())
                .thenComparing(Evidence::source)
                .thenComparing(Evidence::what))
        .toList();
  }

  /** The name of the class within {@code stats}. */
  String place() {
    return subject.getName().replace("org.quietline.stats.", "").replace('$', '.');
  }

  String kindInWords() {
    return kind.words;
  }

  /** The digits that agree, never more than a double holds. */
  String digitsInWords() {
    return digits >= 15.95 ? "all" : String.format(Locale.ROOT, "%.1f", Math.max(0, digits));
  }
}
