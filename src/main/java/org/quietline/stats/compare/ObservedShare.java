package org.quietline.stats.compare;

import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * So many of so many, and what that says about the true share.
 *
 * <p>The exact interval of Clopper and Pearson is made of the shares at which the count would be
 * too small or too large; it never holds the truth less often than it says, and at small n a good
 * deal more often (a 95 % interval of n = 8 in 98.9 % of samples where the true share is 0.3). The
 * score interval of Wilson {@code (p + z²/2n ± z·√(p(1 − p)/n + z²/4n²))/(1 + z²/n)} is shorter and
 * holds it about as often as it says on average, at some shares less (of n = 20 in 92.5 % where it
 * is 0.05). None of n gives a lower end of zero; all of n an upper end of one. Exact bounds are
 * accurate to about 1e-10 relative up to a thousand tries. Source: Clopper and Pearson (1934),
 * Biometrika 26, 404–413; Wilson (1927), J. Am. Stat. Assoc. 22, 209–212; NIST/SEMATECH e-Handbook
 * 7.2.4.
 *
 * @param count how many, from 0 to {@code of}
 * @param of of how many independent tries, at least 1
 */
public record ObservedShare(int count, int of) {

  /**
   * Checks the ranges.
   *
   * @param count how many
   * @param of of how many
   * @throws IllegalArgumentException if the count is negative or above {@code of}, or {@code of} is
   *     below 1
   */
  public ObservedShare {
    Require.atLeast(of, 1, "tries");
    if (count < 0 || count > of) {
      throw new IllegalArgumentException("count must be from 0 to " + of + ", is " + count);
    }
  }

  /**
   * The share seen.
   *
   * @return {@code count/of}
   */
  public double share() {
    return (double) count / of;
  }

  /**
   * The exact two-sided interval of the true share.
   *
   * @param level the least confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval exactInterval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    return new Interval(lowest(tail), highest(tail));
  }

  /**
   * The exact one-sided lower bound: a true share below it makes such a count or more rarer than
   * {@code 1 − level}.
   *
   * @param level the least confidence level, between 0 and 1
   * @return the bound, zero if none was seen
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double lowerBound(double level) {
    Require.share(level, "level");
    return lowest(1 - level);
  }

  /**
   * The exact one-sided upper bound: a true share above it makes such a count or less rarer than
   * {@code 1 − level}.
   *
   * @param level the least confidence level, between 0 and 1
   * @return the bound, one if all were seen
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public double upperBound(double level) {
    Require.share(level, "level");
    return highest(1 - level);
  }

  /**
   * The two-sided score interval of the true share.
   *
   * @param level the nominal confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval scoreInterval(double level) {
    Require.share(level, "level");
    double z = Normal.exceededWith((1 - level) / 2);
    double seen = share();
    double weight = z * z / of;
    double middle = (seen + weight / 2) / (1 + weight);
    double half = z * Math.sqrt(seen * (1 - seen) / of + weight / of / 4) / (1 + weight);
    return new Interval(
        count == 0 ? 0 : Math.max(0, middle - half), count == of ? 1 : Math.min(1, middle + half));
  }

  /**
   * How far the share is from a given one, in the deviations that one gives: {@code (p − p0)/√(p0(1
   * − p0)/n)}, about standard normal where {@code n·p0} and {@code n·(1 − p0)} are at least about
   * 5; {@link BinomialTail} is exact anywhere.
   *
   * @param against the share p0, between 0 and 1
   * @return z, positive where more were seen
   * @throws IllegalArgumentException if the share is not between 0 and 1
   */
  public double scoreAgainst(double against) {
    Require.share(against, "share to test against");
    return (share() - against) / Math.sqrt(against * (1 - against) / of);
  }

  private double lowest(double tail) {
    if (count == 0) {
      return 0;
    }
    double odds = logOdds(x -> BinomialTail.atLeast(count, of, x), tail);
    return 1 / (1 + Math.exp(-odds));
  }

  private double highest(double tail) {
    if (count == of) {
      return 1;
    }
    double odds = logOdds(x -> BinomialTail.atMost(count, of, x), tail);
    return 1 / (1 + Math.exp(-odds));
  }

  private double logOdds(DoubleUnaryOperator chance, double wanted) {
    double start = Math.log((count + 0.5) / (of - count + 0.5));
    double logWanted = Math.log(wanted);
    return Roots.of(
        odds -> Math.log(chance.applyAsDouble(1 / (1 + Math.exp(-odds)))) - logWanted, start, 1);
  }
}
