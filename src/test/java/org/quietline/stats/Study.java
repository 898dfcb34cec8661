package org.quietline.stats;

import java.util.Comparator;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * One line of the table of simulated benches: what the program states against what benches of known
 * truth gave.
 *
 * @param what what was counted
 * @param where on which benches
 * @param unit the unit of both numbers
 * @param stated what the program states on average; not a number where it states nothing
 * @param observed what the benches gave
 * @param benches how many there were
 */
public record Study(
    String what, String where, String unit, double stated, double observed, int benches) {
  private static final Queue<Study> ALL = new ConcurrentLinkedQueue<>();

  /** Puts a line on the table. */
  public static void add(
      String what, String where, String unit, double stated, double observed, int benches) {
    ALL.add(new Study(what, where, unit, stated, observed, benches));
  }

  /** The lines, in the order of what and where. */
  public static List<Study> all() {
    return ALL.stream()
        .sorted(Comparator.comparing(Study::what).thenComparing(Study::where))
        .toList();
  }
}
