package org.quietline.stats.distribution;

import org.quietline.stats.Interval;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * A weighted mixture of Student's t of one number of degrees of freedom, each with its own centre
 * and scale, plus a normal part that all share: {@code mk + vk·T + u·Z} with chance wk.
 *
 * <p>This is what a height of a line is known to be where the spread of lines is not known but
 * averaged over. One component alone is exact as {@link StudentPlusNormal} is. Of several each t is
 * taken as a normal of random scale, {@code T = Z/√(χ²/ν)}, and the scale is averaged by the
 * trapezoidal rule in {@code ln χ²}; normal tails come from a table. That is good to about 1e-9 in
 * a chance from one degree of freedom on, absolute, not relative. Source: the representation of t
 * by Student (1908); the rule, Trefethen and Weideman, SIAM Review 56 (2014) 385–458.
 */
public final class StudentMixture {
  /** Logarithm of how small a density may be before it is left out. */
  private static final double NEGLIGIBLE = -24;

  /** Steps of the rule, in standard deviations of {@code ln χ²}. */
  private static final double STEP = 0.75;

  /** The widest step: {@code ln χ²} of few degrees of freedom is no normal. */
  private static final double WIDEST = 0.4;

  /** A bracket narrower than this has no digits left. */
  private static final double NARROW = 1e-15;

  private static final int MOST_SECANTS = 12;

  /** Two secants end within so many deviations of one another. */
  private static final double SETTLED = 1e-13;

  /** The same for drawing: the last step of a secant leaves about the square of its length. */
  private static final double NEARLY = 0.02;

  /** A chance beyond which the table of the normal distribution has no digits left. */
  private static final double LEAST_CHANCE = 1e-16;

  private final double[] weights;
  private final double[] means;
  private final double[] scales;
  private final double degreesOfFreedom;
  private final double known;
  private final double[] shares;

  /**
   * One over the deviation of each component at each scale, the scales of one component together.
   */
  private final double[] steepness;

  private StudentMixture(
      double[] weights, double[] means, double[] scales, double degreesOfFreedom, double known) {
    this.weights = weights;
    this.means = means;
    this.scales = scales;
    this.degreesOfFreedom = degreesOfFreedom;
    this.known = known;
    double[][] rule = weights.length > 1 ? scaleRule(degreesOfFreedom) : new double[2][0];
    this.shares = rule[1];
    this.steepness = new double[weights.length * shares.length];
    for (int k = 0; k < weights.length && shares.length > 0; k++) {
      for (int i = 0; i < shares.length; i++) {
        double stretched = scales[k] * rule[0][i];
        steepness[k * shares.length + i] = 1 / Math.sqrt(stretched * stretched + known * known);
      }
    }
  }

  /**
   * A mixture.
   *
   * @param weights of the components, zero or more, not all zero; they are divided by their sum
   * @param means as many centres, finite
   * @param scales as many scales, zero or more
   * @param degreesOfFreedom above zero and finite
   * @param known the standard deviation of the normal part, zero or more
   * @return the mixture
   * @throws IllegalArgumentException if lengths differ or a number is not in its range
   */
  public static StudentMixture of(
      double[] weights, double[] means, double[] scales, double degreesOfFreedom, double known) {
    if (means.length != weights.length || scales.length != weights.length) {
      throw new IllegalArgumentException(
          weights.length
              + " weights but "
              + means.length
              + " means and "
              + scales.length
              + " scales");
    }
    Require.positive(degreesOfFreedom, "degrees of freedom");
    Require.notNegative(known, "known deviation");
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      Require.notNegative(weights[k], "weight");
      Require.finite(means[k], "mean");
      Require.notNegative(scales[k], "scale");
      sum += weights[k];
    }
    Require.positive(sum, "sum of the weights");
    double[] shares = weights.clone();
    for (int k = 0; k < shares.length; k++) {
      shares[k] /= sum;
    }
    return new StudentMixture(shares, means.clone(), scales.clone(), degreesOfFreedom, known);
  }

  /** Factors by which a normal is stretched to be t, and their chances. */
  private static double[][] scaleRule(double df) {
    double step = Math.min(WIDEST, STEP * Math.sqrt(2 / df));
    int below = stepsTo(df, -step);
    int above = stepsTo(df, step);
    double[] stretches = new double[below + above + 1];
    double[] shares = new double[stretches.length];
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      double y = (i - below) * step;
      stretches[i] = Math.exp(-y / 2);
      shares[i] = Math.exp(logDensity(df, y));
      sum += shares[i];
    }
    for (int i = 0; i < shares.length; i++) {
      shares[i] /= sum;
    }
    return new double[][] {stretches, shares};
  }

  private static int stepsTo(double df, double step) {
    int steps = 1;
    while (logDensity(df, steps * step) > NEGLIGIBLE) {
      steps++;
    }
    return steps;
  }

  /** Of {@code y = ln(χ²/ν)}, zero at its largest. */
  private static double logDensity(double df, double y) {
    return df / 2 * (y - Math.expm1(y));
  }

  /**
   * The mean of the centres, which is the mean of the mixture where t has one.
   *
   * @return the mean
   */
  public double mean() {
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      sum += weights[k] * means[k];
    }
    return sum;
  }

  /**
   * The degrees of freedom.
   *
   * @return those of every component
   */
  public double degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /**
   * The chance of a value above x.
   *
   * @param x the value, finite
   * @return the chance
   * @throws IllegalArgumentException if the value is not finite
   */
  public double above(double x) {
    Require.finite(x, "value");
    if (weights.length == 1) {
      return new StudentPlusNormal(scales[0], degreesOfFreedom, known).above(x - means[0]);
    }
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      double step = x - means[k];
      double part = 0;
      int from = k * shares.length;
      for (int i = 0; i < shares.length; i++) {
        part += shares[i] * NormalTable.above(step == 0 ? 0 : step * steepness[from + i]);
      }
      sum += weights[k] * part;
    }
    return Math.min(1, sum);
  }

  /**
   * The chance that a value is farther from zero than an allowance.
   *
   * @param allowance the allowance, zero or more
   * @return {@code P(|value| > allowance)}
   * @throws IllegalArgumentException if the allowance is negative or not finite
   */
  public double chanceBeyond(double allowance) {
    Require.notNegative(allowance, "allowance");
    return Math.min(1, above(allowance) + mirrored().above(allowance));
  }

  private StudentMixture mirrored() {
    double[] turned = new double[means.length];
    for (int k = 0; k < turned.length; k++) {
      turned[k] = -means[k];
    }
    return new StudentMixture(weights, turned, scales, degreesOfFreedom, known);
  }

  /**
   * The value that is exceeded with a given chance.
   *
   * @param chance between 0 and 1
   * @return the value
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  public double exceededWith(double chance) {
    Require.share(chance, "chance");
    if (weights.length == 1) {
      return means[0] + exactReach(chance);
    }
    double quick = bySecants(chance, SETTLED);
    return Double.isNaN(quick) ? byBracket(chance) : quick;
  }

  /**
   * By secants of the normal quantile of the chance, which is nearly a straight line of the value;
   * NaN where they do not settle.
   */
  private double bySecants(double chance, double settled) {
    double middle = mean();
    double variance = known * known;
    for (int k = 0; k < weights.length; k++) {
      double off = means[k] - middle;
      variance += weights[k] * (scales[k] * scales[k] + off * off);
    }
    double deviation = Math.sqrt(variance);
    double target = Normal.exceededWith(chance);
    double before = middle + deviation * target;
    double heightBefore = Normal.exceededWith(inside(above(before)));
    double now = before + deviation * (target - heightBefore);
    for (int i = 0; i < MOST_SECANTS; i++) {
      double height = Normal.exceededWith(inside(above(now)));
      double next =
          height == target
              ? now
              : now + (target - height) * (now - before) / (height - heightBefore);
      if (!Double.isFinite(next)) {
        return Double.NaN;
      }
      if (Math.abs(next - now) <= settled * deviation) {
        return next;
      }
      before = now;
      heightBefore = height;
      now = next;
    }
    return Double.NaN;
  }

  private static double inside(double chance) {
    return Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, chance));
  }

  private double byBracket(double chance) {
    double side = chance <= 0.5 ? 1 : -1;
    double tail = Math.min(chance, 1 - chance);
    double student = Student.exceededWith(tail, degreesOfFreedom);
    double normal = known * Normal.exceededWith(tail);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < weights.length; k++) {
      low = Math.min(low, means[k] + side * Math.max(scales[k] * student, normal));
      high = Math.max(high, means[k] + side * (scales[k] * student + normal));
    }
    double width = Math.abs(high - low) / 2;
    double middle = (low + high) / 2;
    return width <= NARROW * Math.abs(middle)
        ? middle
        : Roots.of(x -> above(x) - chance, middle, width);
  }

  private double exactReach(double chance) {
    StudentPlusNormal only = new StudentPlusNormal(scales[0], degreesOfFreedom, known);
    return chance <= 0.5 ? only.exceededWith(chance) : -only.exceededWith(1 - chance);
  }

  /**
   * The interval with equal chances to either side.
   *
   * @param level the chance inside, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval interval(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    return new Interval(exceededWith(1 - tail), exceededWith(tail));
  }

  /**
   * The interval to about a thousandth of a deviation, in a third of the time: for drawing.
   *
   * @param level the share in it, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval sketched(double level) {
    Require.share(level, "level");
    double tail = (1 - level) / 2;
    return new Interval(sketchedEnd(1 - tail), sketchedEnd(tail));
  }

  private double sketchedEnd(double chance) {
    double end = weights.length == 1 ? Double.NaN : bySecants(chance, NEARLY);
    return Double.isNaN(end) ? exceededWith(chance) : end;
  }
}
