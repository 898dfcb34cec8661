package org.quietline.assess;

import java.util.Optional;
import org.quietline.bench.Rule;
import org.quietline.stats.control.CumulativeSum;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.runlength.Chart;

/**
 * The rules about several results of a stream. Zones are thirds of the way to the action limit, so
 * that rules keep their chances where limits are wide. Source: Western Electric, Statistical
 * Quality Control Handbook (1956); ISO 7870-2; the sums as in ISO 7870-4 with k = 0.5 and h = 5.
 */
final class StreamRules {
  /** Deviations from the centre to the action limit by which zones are measured. */
  static final double ACTION = 3;

  private static final double REFERENCE = 0.5;

  /** The decision interval of the cumulative sums, in deviations. */
  static final double DECISION = 5;

  private StreamRules() {}

  /** The pattern of a rule; empty for a rule that is no pattern of deviations. */
  static Optional<RunRule> pattern(Rule rule) {
    return switch (rule) {
      case TWO_OF_THREE_BEYOND_WARNING -> Optional.of(new RunRule.Beyond(2, 3, 2));
      case FOUR_OF_FIVE_BEYOND_ONE_DEVIATION -> Optional.of(new RunRule.Beyond(4, 5, 1));
      case EIGHT_ON_ONE_SIDE -> Optional.of(new RunRule.SameSide(8));
      case SIX_RISING_OR_FALLING -> Optional.of(new RunRule.Steady(6));
      default -> Optional.empty();
    };
  }

  /** The cumulative sums of deviations; they start anew after a signal. */
  static CumulativeSum sums() {
    return new CumulativeSum(0, 1, REFERENCE, DECISION, 0, CumulativeSum.AfterSignal.START_ANEW);
  }

  /** The rule as a chart whose run length can be asked for. */
  static Optional<Chart> chart(Rule rule) {
    if (rule == Rule.CUMULATIVE_SUM_BEYOND_LIMIT) {
      return Optional.of(Chart.cumulativeSum(REFERENCE, DECISION));
    }
    return pattern(rule).map(Chart::rules);
  }
}
