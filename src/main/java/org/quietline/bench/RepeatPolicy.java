package org.quietline.bench;

import java.util.Arrays;
import java.util.Optional;

/**
 * What is done when the two readings of a result disagree. The rule is chosen once for a method and
 * not by what a result looks like: keeping the two of three that lie closest would make readings
 * seem to agree better than they do. Source: ISO 5725-6:1994, 5.2.2 (clause from memory).
 */
public enum RepeatPolicy {
  /**
   * The test is expensive: one more reading. The mean of the three if their range is within the
   * critical range of three, else their median.
   */
  ONE_MORE("one-more", 1),
  /**
   * The test is cheap: two more readings. The mean of the four if their range is within the
   * critical range of four, else their median.
   */
  TWO_MORE("two-more", 2);

  private final String key;
  private final int more;

  RepeatPolicy(String key, int more) {
    this.key = key;
    this.more = more;
  }

  /**
   * The word used in settings and findings.
   *
   * @return {@code one-more} or {@code two-more}
   */
  public String key() {
    return key;
  }

  /**
   * How many readings it asks for beyond a pair that disagrees.
   *
   * @return 1 or 2
   */
  public int more() {
    return more;
  }

  /**
   * Finds a policy by its word.
   *
   * @param text the word
   * @return empty when there is no such policy
   */
  public static Optional<RepeatPolicy> parse(String text) {
    return Arrays.stream(values()).filter(p -> p.key.equals(text)).findFirst();
  }
}
