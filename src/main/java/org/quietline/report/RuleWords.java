package org.quietline.report;

import java.time.LocalDate;
import org.quietline.assess.Signal;
import org.quietline.bench.Method;
import org.quietline.bench.Rule;

/** Rules and signals in words. */
final class RuleWords {
  private RuleWords() {}

  /** What a result did that broke the rule. */
  static String phrase(Rule rule) {
    return switch (rule) {
      case BEYOND_ACTION_LIMIT -> "result beyond the action limit";
      case WEIGHTED_MEAN_BEYOND_LIMIT -> "weighted mean beyond its limit";
      case READINGS_DISAGREE -> "readings too far apart";
      case TWO_OF_THREE_BEYOND_WARNING -> "two of three beyond a warning limit on one side";
      case FOUR_OF_FIVE_BEYOND_ONE_DEVIATION -> "four of five beyond one deviation on one side";
      case EIGHT_ON_ONE_SIDE -> "eight in a row on one side of the centre";
      case SIX_RISING_OR_FALLING -> "six in a row rising or falling";
      case CUMULATIVE_SUM_BEYOND_LIMIT -> "cumulative sum beyond its limit";
      case MOVING_RANGE_BEYOND_LIMIT -> "step from the result before beyond its limit";
      case CALIBRATION_STEP -> "step from one calibration to the next";
      case BLANK_DRIFTING -> "blank drifting";
      case METHODS_DISAGREE -> "related methods disagree";
    };
  }

  /** The rule in a few words, for a place that lists the rules in use. */
  static String brief(Rule rule, String readingsLimit) {
    return switch (rule) {
      case BEYOND_ACTION_LIMIT -> "action limit";
      case WEIGHTED_MEAN_BEYOND_LIMIT -> "weighted mean";
      case READINGS_DISAGREE -> "readings over " + readingsLimit + " apart";
      default -> phrase(rule);
    };
  }

  /** What was seen, with its size: "weighted mean 0.1872 is above its limit of 0.1861 % mass". */
  static String seen(Signal signal, Method method) {
    Numbers numbers = new Numbers(method.decimals());
    String limit = numbers.fine(signal.limit()) + " " + method.unit();
    String side = signal.value() < signal.limit() ? "below" : "above";
    return switch (signal.id().rule()) {
      case BEYOND_ACTION_LIMIT ->
          "result "
              + numbers.fine(signal.value())
              + " is "
              + side
              + " the action limit of "
              + limit;
      case WEIGHTED_MEAN_BEYOND_LIMIT ->
          "the weighted mean, "
              + numbers.fine(signal.value())
              + ", is "
              + side
              + " its limit of "
              + limit;
      case READINGS_DISAGREE ->
          "two readings are " + numbers.fine(signal.value()) + " apart, the limit is " + limit;
      case CUMULATIVE_SUM_BEYOND_LIMIT ->
          "the cumulative sum, "
              + Numbers.fixed(signal.value(), 2)
              + " deviations, is beyond its limit of "
              + Numbers.fixed(signal.limit(), 0);
      case BLANK_DRIFTING ->
          "the blank is beyond what those before it predict, "
              + Numbers.figures(signal.value(), 3)
              + " against "
              + Numbers.figures(signal.limit(), 3);
      default ->
          phrase(signal.id().rule()) + ", " + numbers.fine(signal.value()) + " against " + limit;
    };
  }

  /** The day of a signal. */
  static LocalDate day(Signal signal) {
    return signal.id().at().toLocalDate();
  }
}
