package org.quietline.bench;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

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
 * @param restartAt what makes the weighted mean, sums and run counts start anew, beside a change of
 *     limits and of material
 */
public record ChartSettings(
    int baselineResults,
    LimitsFrom limitsFrom,
    double weighting,
    List<Rule> stopRules,
    List<Rule> noticeRules,
    Set<RestartAt> restartAt) {

  /** What starts the weighted mean, sums and run counts anew where nothing is set. */
  public static final Set<RestartAt> USUAL_RESTARTS =
      Collections.unmodifiableSet(EnumSet.of(RestartAt.CALIBRATION, RestartAt.CLOSED_SIGNAL));

  /** The settings of a bench that sets none. */
  public static final ChartSettings DEFAULTS =
      new ChartSettings(
          20,
          LimitsFrom.MOVING_RANGE,
          0.4,
          List.of(
              Rule.BEYOND_ACTION_LIMIT, Rule.WEIGHTED_MEAN_BEYOND_LIMIT, Rule.READINGS_DISAGREE),
          List.of(),
          USUAL_RESTARTS);

  /** Checks ranges. */
  public ChartSettings {
    Checks.atLeast("baseline-results", 5, baselineResults);
    if (!(weighting >= 0.01 && weighting <= 1)) {
      throw new IllegalArgumentException(
          "weighting is " + weighting + ", it must be from 0.01 to 1");
    }
    stopRules = List.copyOf(stopRules);
    noticeRules = List.copyOf(noticeRules);
    EnumSet<RestartAt> restarts = EnumSet.noneOf(RestartAt.class);
    restarts.addAll(restartAt);
    restartAt = Collections.unmodifiableSet(restarts);
  }

  /**
   * Settings with the usual restarts.
   *
   * @param baselineResults how many first results make the baseline, at least 5
   * @param limitsFrom how limits are computed
   * @param weighting the weight of the newest result, from 0.01 to 1
   * @param stopRules the rules whose signals stop the method
   * @param noticeRules the rules whose signals are notices
   */
  public ChartSettings(
      int baselineResults,
      LimitsFrom limitsFrom,
      double weighting,
      List<Rule> stopRules,
      List<Rule> noticeRules) {
    this(baselineResults, limitsFrom, weighting, stopRules, noticeRules, USUAL_RESTARTS);
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

  /**
   * What makes the weighted mean, sums and run counts start anew. A calibration is an adjustment,
   * after which ISO 7870-6 starts anew; a closed signal is one, too. A new reagent lot adjusts
   * nothing, and each restart forgets what was seen, so that it is not among the usual ones: with
   * four control results to a calibration half of all shifts by one deviation are seen within 13
   * results, with two within 19.
   */
  public enum RestartAt {
    /** A calibration. */
    CALIBRATION("calibration"),
    /** A control result with another reagent lot than the one before. */
    REAGENT_LOT("reagent-lot"),
    /** An action that closes a signal of the stream. */
    CLOSED_SIGNAL("closed-signal");

    private final String key;

    RestartAt(String key) {
      this.key = key;
    }

    /**
     * The word used in settings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }

    /**
     * Finds one by its word.
     *
     * @param text the word
     * @return empty when there is no such one
     */
    public static Optional<RestartAt> parse(String text) {
      return Arrays.stream(values()).filter(v -> v.key.equals(text)).findFirst();
    }
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
    GUARANTEED("guaranteed"),
    /**
     * Prediction limits for a result under a new calibration, from the variance within and between
     * the calibrations of the baseline.
     */
    BETWEEN_CALIBRATIONS("between-calibrations");

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
