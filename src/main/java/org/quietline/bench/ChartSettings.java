package org.quietline.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How control charts are made.
 *
 * @param baselineResults how many first results make the baseline where nobody chose one, at least
 *     5
 * @param limitsFrom how limits are computed from the baseline
 * @param weighting the weight of the newest result in the exponentially weighted mean, from 0.01 to
 *     1
 * @param stopRules the rules whose signals stop the method
 * @param noticeRules the rules whose signals are notices
 */
public record ChartSettings(
    int baselineResults,
    LimitsFrom limitsFrom,
    double weighting,
    List<Rule> stopRules,
    List<Rule> noticeRules) {

  /** The settings of a bench that sets none. */
  public static final ChartSettings DEFAULTS =
      new ChartSettings(
          20,
          LimitsFrom.MOVING_RANGE,
          0.4,
          List.of(
              Rule.BEYOND_ACTION_LIMIT, Rule.WEIGHTED_MEAN_BEYOND_LIMIT, Rule.READINGS_DISAGREE),
          List.of());

  /** Checks ranges. */
  public ChartSettings {
    Checks.atLeast("baseline-results", 5, baselineResults);
    if (!(weighting >= 0.01 && weighting <= 1)) {
      throw new IllegalArgumentException(
          "weighting is " + weighting + ", it must be from 0.01 to 1");
    }
    stopRules = List.copyOf(stopRules);
    noticeRules = List.copyOf(noticeRules);
  }

  /**
   * The weight a rule has on this bench.
   *
   * @param rule the rule
   * @return empty when the bench does not use the rule; stop wins over notice
   */
  public Optional<Weight> weightOf(Rule rule) {
    if (stopRules.contains(rule)) {
      return Optional.of(Weight.STOP);
    }
    return noticeRules.contains(rule) ? Optional.of(Weight.NOTICE) : Optional.empty();
  }

  /** What a signal asks for. */
  public enum Weight {
    /** Stop reporting results of the method until a person has looked. */
    STOP,
    /** Look, and go on. */
    NOTICE
  }

  /** How limits are computed from a baseline. */
  public enum LimitsFrom {
    /** Centre and three times the mean moving range over 1.128 (the sector's practice). */
    MOVING_RANGE("moving-range"),
    /** Centre and three sample deviations. */
    SAMPLE_DEVIATION("sample-deviation"),
    /** Prediction limits of Student's t, honest in small samples. */
    PREDICTION("prediction"),
    /** Tolerance-interval form: the false-signal rate is kept with 90 % confidence. */
    GUARANTEED("guaranteed");

    private final String key;

    LimitsFrom(String key) {
      this.key = key;
    }

    /**
     * The word used in settings and findings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }

    /**
     * Finds a way by its word.
     *
     * @param text the word
     * @return empty when there is no such way
     */
    public static Optional<LimitsFrom> parse(String text) {
      return Arrays.stream(values()).filter(v -> v.key.equals(text)).findFirst();
    }
  }
}
