package org.quietline.stats.runlength;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.control.RunRules;
import org.quietline.stats.numeric.Require;

/**
 * A chart whose run length is asked for. Everything is in deviations of single values from the
 * centre; centre and deviation are taken as exactly right.
 */
public sealed interface Chart {

  /**
   * Single values against two limits.
   *
   * @param width the half-width of the limits, above 0 and at most 10
   * @return the chart
   * @throws IllegalArgumentException if the width is outside its range or NaN
   */
  static Individuals individuals(double width) {
    return new Individuals(width);
  }

  /**
   * The exponentially weighted mean against its steady limits.
   *
   * @param weight the weight λ of the newest value, from 0.01 to 1
   * @param width the half-width L of the limits in deviations of the mean, above 0 and at most 10
   * @return the chart
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  static WeightedMean weightedMean(double weight, double width) {
    return new WeightedMean(weight, width, Limits.STEADY);
  }

  /**
   * The exponentially weighted mean.
   *
   * @param weight the weight λ of the newest value, from 0.01 to 1
   * @param width the half-width L of the limits in deviations of the mean, above 0 and at most 10
   * @param limits how the limits are drawn
   * @return the chart
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  static WeightedMean weightedMean(double weight, double width, Limits limits) {
    return new WeightedMean(weight, width, limits);
  }

  /**
   * An upper and a lower cumulative sum that start at zero.
   *
   * @param reference the reference value k, from 0.1 to 3
   * @param interval the decision interval h, above 0, at most 50 and at most 40 times k
   * @return the chart
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  static CumulativeSum cumulativeSum(double reference, double interval) {
    return new CumulativeSum(reference, interval, 0, Side.BOTH);
  }

  /**
   * Cumulative sums.
   *
   * @param reference the reference value k, from 0 for one side and from 0.1 for both, to 3
   * @param interval the decision interval h, above 0 and at most 50; for both sides at most 40
   *     times k
   * @param headStart where each sum starts, from 0 to h, for both sides to h/2
   * @param side which sums are kept
   * @return the chart
   * @throws IllegalArgumentException if a figure is outside its range or NaN
   */
  static CumulativeSum cumulativeSum(
      double reference, double interval, double headStart, Side side) {
    return new CumulativeSum(reference, interval, headStart, side);
  }

  /**
   * A set of run rules; the first that is met signals.
   *
   * @param rules at least one
   * @return the chart
   * @throws IllegalArgumentException if there is none
   */
  static Rules rules(RunRule... rules) {
    return new Rules(List.of(rules));
  }

  /**
   * A set of run rules as series are judged by; the first that is met signals.
   *
   * @param rules the rules
   * @return the chart
   * @throws IllegalArgumentException if one looks for some of more than 31 values
   */
  static Rules rules(RunRules rules) {
    return new Rules(rules.rules());
  }

  /**
   * Run rules that are looked at only when a set of values is whole: a rule is met where its
   * pattern ends with the last value of a set. Patterns reach across sets, and over all values of a
   * set.
   *
   * @param every how many values make a set, at least 1
   * @param rules at least one
   * @return the chart
   * @throws IllegalArgumentException if there is none or the set is below 1
   */
  static Rules rulesEvery(int every, RunRule... rules) {
    return new Rules(List.of(rules), every);
  }

  /**
   * Several charts of the same values; the first signal of any counts.
   *
   * @param charts at least one
   * @return the charts together
   * @throws IllegalArgumentException if there is none
   */
  static Together together(Chart... charts) {
    return new Together(Arrays.asList(charts));
  }

  /**
   * The same chart in units that are larger by a factor: what a chart does whose deviation was
   * taken for that factor of the true one.
   *
   * @param factor the factor, above zero
   * @return the chart in true deviations
   * @throws IllegalArgumentException if a figure gets outside its range
   */
  Chart widened(double factor);

  /**
   * The charts this one consists of.
   *
   * @return itself, or the parts of charts watched together
   */
  default Stream<Chart> parts() {
    return Stream.of(this);
  }

  /** How the limits of a weighted mean are drawn. */
  enum Limits {
    /** {@code ± L·√(λ/(2 − λ))} from the first value. */
    STEADY,
    /** {@code ± L·√(λ/(2 − λ)·(1 − (1 − λ)^(2t)))}, with the exact variance since the start. */
    GROWING
  }

  /** Which cumulative sums are kept. */
  enum Side {
    /** The upper, which sees the mean rise, and the lower, which sees it fall. */
    BOTH,
    /** The upper only. */
    UPPER,
    /** The lower only. */
    LOWER
  }

  /**
   * Single values against two limits; a value on a limit is inside.
   *
   * @param width the half-width of the limits
   */
  record Individuals(double width) implements Chart {
    /**
     * Checks the width.
     *
     * @param width the half-width of the limits
     * @throws IllegalArgumentException if it is not above 0 and at most 10
     */
    public Individuals {
      checkWidth(width);
    }

    @Override
    public Chart widened(double factor) {
      return new Individuals(width * factor);
    }
  }

  /**
   * The exponentially weighted mean {@code z(t) = λ·x(t) + (1 − λ)·z(t−1)}, {@code z(0) = 0}.
   * Source: Roberts (1959), Technometrics 1, 239–250; Lucas and Saccucci (1990), Technometrics 32,
   * 1–12; ISO 7870-6:2016.
   *
   * @param weight the weight λ of the newest value
   * @param width the half-width L of the limits in deviations of the mean
   * @param limits how the limits are drawn
   */
  record WeightedMean(double weight, double width, Limits limits) implements Chart {
    /**
     * Checks the ranges.
     *
     * @param weight the weight λ of the newest value
     * @param width the half-width L of the limits in deviations of the mean
     * @param limits how the limits are drawn
     * @throws IllegalArgumentException if the weight is not from 0.01 to 1 or the width not above 0
     *     and at most 10
     */
    public WeightedMean {
      if (!(weight >= 0.01 && weight <= 1)) {
        throw new IllegalArgumentException("weight must be from 0.01 to 1, is " + weight);
      }
      checkWidth(width);
    }

    @Override
    public Chart widened(double factor) {
      return new WeightedMean(weight, width * factor, limits);
    }
  }

  /**
   * Cumulative sums {@code C⁺ = max(0, C⁺ + x − k)} and {@code C⁻ = max(0, C⁻ − x − k)}; a sum
   * above {@code h} signals. Source: Page (1954), Biometrika 41, 100–115; Lucas and Crosier (1982),
   * Technometrics 24, 199–205; ISO 7870-4:2011.
   *
   * @param reference the reference value k
   * @param interval the decision interval h
   * @param headStart where each sum starts
   * @param side which sums are kept
   */
  record CumulativeSum(double reference, double interval, double headStart, Side side)
      implements Chart {
    private static final double LONGEST = 50;
    private static final double MOST_STEPS = 40;

    /**
     * Checks the ranges.
     *
     * @param reference the reference value k
     * @param interval the decision interval h
     * @param headStart where each sum starts
     * @param side which sums are kept
     * @throws IllegalArgumentException if a figure is outside its range
     */
    public CumulativeSum {
      double least = side == Side.BOTH ? 0.1 : 0;
      if (!(reference >= least && reference <= 3)) {
        throw new IllegalArgumentException(
            "reference value must be from " + least + " to 3, is " + reference);
      }
      double most = side == Side.BOTH ? Math.min(LONGEST, MOST_STEPS * reference) : LONGEST;
      if (!(interval > 0 && interval <= most)) {
        throw new IllegalArgumentException(
            "decision interval must be above 0 and at most " + most + ", is " + interval);
      }
      double highest = side == Side.BOTH ? interval / 2 : interval;
      if (!(headStart >= 0 && headStart <= highest)) {
        throw new IllegalArgumentException(
            "head start must be from 0 to " + highest + ", is " + headStart);
      }
    }

    @Override
    public Chart widened(double factor) {
      return new CumulativeSum(reference * factor, interval * factor, headStart * factor, side);
    }
  }

  /**
   * A set of run rules, to be met by values in deviations from the centre. The first value begins a
   * set, and so does the first after a change.
   *
   * @param rules the rules
   * @param every how many values are taken before the rules are looked at; 1 looks after each
   */
  record Rules(List<RunRule> rules, int every) implements Chart {
    private static final int LONGEST_WINDOW = 31;

    /**
     * Copies the rules; a rule given twice counts once.
     *
     * @param rules the rules
     * @param every how many values are taken before the rules are looked at
     * @throws IllegalArgumentException if there is none, one looks for some of more than 31 values,
     *     or {@code every} is below 1
     */
    public Rules {
      rules = rules.stream().distinct().toList();
      Require.atLeast(rules.size(), 1, "number of rules");
      Require.atLeast(every, 1, "every");
      rules.forEach(Rules::check);
    }

    /**
     * Rules that are looked at after each value.
     *
     * @param rules the rules
     * @throws IllegalArgumentException if there is none, or one looks for some of more than 31
     *     values
     */
    public Rules(List<RunRule> rules) {
      this(rules, 1);
    }

    private static void check(RunRule rule) {
      boolean some =
          (rule instanceof RunRule.Beyond beyond && beyond.count() < beyond.of())
              || (rule instanceof RunRule.EitherSide either && either.count() < either.of());
      if (some && rule.span() > LONGEST_WINDOW) {
        throw new IllegalArgumentException(
            "a rule that not all of its values need to meet can span at most "
                + LONGEST_WINDOW
                + ", spans "
                + rule.span());
      }
    }

    @Override
    public Chart widened(double factor) {
      return new Rules(rules.stream().map(rule -> rule.widened(factor)).toList(), every);
    }
  }

  /**
   * Several charts of the same values; the first signal of any counts.
   *
   * @param charts the charts
   */
  record Together(List<Chart> charts) implements Chart {
    /**
     * Copies the charts; those that are themselves several are taken apart.
     *
     * @param charts the charts
     * @throws IllegalArgumentException if there is none
     */
    public Together {
      charts = charts.stream().flatMap(Chart::parts).distinct().toList();
      Require.atLeast(charts.size(), 1, "number of charts");
    }

    @Override
    public Stream<Chart> parts() {
      return charts.stream();
    }

    @Override
    public Chart widened(double factor) {
      return new Together(charts.stream().map(chart -> chart.widened(factor)).toList());
    }
  }

  private static void checkWidth(double width) {
    if (!(width > 0 && width <= 10)) {
      throw new IllegalArgumentException("width must be above 0 and at most 10, is " + width);
    }
  }
}
