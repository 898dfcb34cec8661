package org.quietline.stats.agreement;

import java.util.Arrays;
import java.util.Optional;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.distribution.ToleranceFactor;
import org.quietline.stats.model.StraightLine;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.Summary;

/**
 * How far two ways of measuring the same things differ: the mean difference, the limits between
 * which most differences lie, and whether the difference depends on the level.
 *
 * <p>With differences {@code d = second − first} of mean d̄ and sample deviation s, the limits are
 * {@code d̄ ± z·s}, z the normal quantile of the content, 1.96 for 95 %. Differences are taken as
 * independent and normal, and the same at all levels; {@link #trend()} tells whether they are. The
 * relative form takes {@code d/((first + second)/2)}, for scatter in proportion to the level.
 *
 * <p>The interval of the mean is {@code d̄ ± t·s/√n}; that of one limit is exact by the noncentral
 * t, as the limit is a quantile of the differences. Both hold their level at any n. {@link
 * #approximateLimitError} is the customary approximation.
 *
 * <p>Special cases: differences all equal have a deviation of zero, and all intervals shrink to
 * them.
 *
 * <p>Source: Bland and Altman (1986), Lancet 327, 307–310; (1999), Stat. Methods Med. Res. 8,
 * 135–160; Carkeet (2015), Optom. Vis. Sci. 92, e71–e80 (exact intervals).
 */
public final class LimitsOfAgreement {
  private final Summary differences;
  private final Optional<StraightLine> trend;

  private LimitsOfAgreement(double[] differences, double[] means) {
    this.differences = Summary.of(differences);
    boolean oneLevel = Arrays.stream(means).distinct().count() == 1;
    this.trend =
        oneLevel || means.length < 3
            ? Optional.empty()
            : Optional.of(StraightLine.fit(means, differences));
  }

  /**
   * Compares by the differences, in the unit of the values.
   *
   * @param first at least two finite numbers
   * @param second as many, of the same things in the same order
   * @return the comparison
   * @throws IllegalArgumentException if there are fewer than two pairs, the lengths differ, or a
   *     number is NaN or infinite
   */
  public static LimitsOfAgreement ofDifferences(double[] first, double[] second) {
    Pairs.require(first, second, 2);
    double[] differences = new double[first.length];
    Arrays.setAll(differences, i -> second[i] - first[i]);
    return new LimitsOfAgreement(differences, means(first, second));
  }

  /**
   * Compares by the differences as shares of the means of the pairs.
   *
   * @param first at least two finite numbers above zero
   * @param second as many, of the same things in the same order
   * @return the comparison; 0.1 is ten per cent
   * @throws IllegalArgumentException if there are fewer than two pairs, the lengths differ, or a
   *     number is NaN, infinite or not above zero
   */
  public static LimitsOfAgreement ofRelativeDifferences(double[] first, double[] second) {
    Pairs.require(first, second, 2);
    for (int i = 0; i < first.length; i++) {
      Require.positive(first[i], "first value " + (i + 1));
      Require.positive(second[i], "second value " + (i + 1));
    }
    double[] means = means(first, second);
    double[] shares = new double[first.length];
    Arrays.setAll(shares, i -> (second[i] - first[i]) / means[i]);
    return new LimitsOfAgreement(shares, means);
  }

  private static double[] means(double[] first, double[] second) {
    double[] means = new double[first.length];
    Arrays.setAll(means, i -> first[i] / 2 + second[i] / 2);
    return means;
  }

  /**
   * The number, mean and sample deviation of the differences.
   *
   * @return the summary, with n − 1 degrees of freedom
   */
  public Summary differences() {
    return differences;
  }

  /**
   * The confidence interval of the mean difference.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval meanInterval(double level) {
    Require.share(level, "level");
    int n = differences.n();
    return within(Student.exceededWith((1 - level) / 2, n - 1) / Math.sqrt(n));
  }

  /**
   * The limits of agreement, {@code d̄ ± z·s}.
   *
   * @param content the share of differences between them, between 0 and 1; customarily 0.95
   * @return the limits
   * @throws IllegalArgumentException if the content is not between 0 and 1
   */
  public Interval limits(double content) {
    return within(widthOf(content));
  }

  /**
   * The exact confidence interval of the lower limit.
   *
   * @param content the share of differences between the limits, between 0 and 1
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the content or the level is not between 0 and 1
   */
  public Interval lowerLimitInterval(double content, double level) {
    Interval factors = factors(content, level);
    return new Interval(
        differences.mean() - factors.upper() * differences.deviation(),
        differences.mean() - factors.lower() * differences.deviation());
  }

  /**
   * The exact confidence interval of the upper limit.
   *
   * @param content the share of differences between the limits, between 0 and 1
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the content or the level is not between 0 and 1
   */
  public Interval upperLimitInterval(double content, double level) {
    Interval factors = factors(content, level);
    return new Interval(
        differences.mean() + factors.lower() * differences.deviation(),
        differences.mean() + factors.upper() * differences.deviation());
  }

  /** How many deviations from the mean the ends for an upper limit are. */
  private Interval factors(double content, double level) {
    Require.share(content, "content");
    Require.share(level, "level");
    int n = differences.n();
    double below = (1 + content) / 2;
    double tail = (1 - level) / 2;
    return new Interval(
        ToleranceFactor.oneSided(n, below, tail), ToleranceFactor.oneSided(n, below, 1 - tail));
  }

  /**
   * The approximate standard error of either limit, {@code s·√(1/n + z²/(2(n − 1)))}; for content
   * 0.95 and many pairs about {@code s·√(3/n)}.
   *
   * @param content the share of differences between the limits, between 0 and 1
   * @return the standard error
   * @throws IllegalArgumentException if the content is not between 0 and 1
   */
  public double approximateLimitError(double content) {
    double z = widthOf(content);
    int n = differences.n();
    return differences.deviation() * Math.sqrt(1.0 / n + z * z / (2.0 * (n - 1)));
  }

  /**
   * The interval that holds at least a content of the differences with a given confidence: the two
   * limits together, their uncertainty counted.
   *
   * @param content the share of differences to hold, between 0 and 1
   * @param confidence the chance of holding it, between 0 and 1
   * @return the interval by the exact two-sided tolerance factor
   * @throws IllegalArgumentException if the content or the confidence is not between 0 and 1
   */
  public Interval holding(double content, double confidence) {
    return within(ToleranceFactor.twoSided(differences.n(), content, confidence));
  }

  /**
   * The difference, relative in the relative form, as a straight line of the mean of the pair. A
   * slope told from zero means that one mean difference does not describe all levels, or that the
   * two ways scatter differently: that alone tilts the line.
   *
   * @return the line; nothing for two pairs or where all means are equal
   */
  public Optional<StraightLine> trend() {
    return trend;
  }

  private static double widthOf(double content) {
    Require.share(content, "content");
    return Normal.exceededWith((1 - content) / 2);
  }

  private Interval within(double deviations) {
    double half = deviations * differences.deviation();
    return new Interval(differences.mean() - half, differences.mean() + half);
  }
}
