package org.quietline.assess;

import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Rule;
import org.quietline.stats.runlength.RunLength;

/**
 * What the stop rules cost: the false signals chance alone gives, if the limits were exactly right.
 */
final class FalseSignals {
  /** The chance of a normal value beyond three deviations, {@code 2·(1 − Φ(3))}. */
  static final double BEYOND_THREE_DEVIATIONS = 0.002_699_796_063_260_207;

  private final boolean pairsStop;
  private final double perResult;

  FalseSignals(ChartSettings chart) {
    this.pairsStop = chart.stopRules().contains(Rule.READINGS_DISAGREE);
    this.perResult = ratePerResult(chart);
  }

  private static double ratePerResult(ChartSettings chart) {
    boolean single = stops(chart, Rule.BEYOND_ACTION_LIMIT);
    boolean weighted = stops(chart, Rule.WEIGHTED_MEAN_BEYOND_LIMIT);
    if (single && weighted) {
      return 1 / RunLength.both(3, chart.weighting(), 3, 0);
    }
    if (weighted) {
      return 1 / RunLength.weightedMean(chart.weighting(), 3, 0);
    }
    return single ? BEYOND_THREE_DEVIATIONS : 0;
  }

  private static boolean stops(ChartSettings chart, Rule rule) {
    return chart.weightOf(rule).filter(w -> w == Weight.STOP).isPresent();
  }

  Answer<Double> expected(Answer<Baseline> baseline, int results, int pairs) {
    if (baseline.value().isEmpty()) {
      return Answer.cannotSay("there are no limits yet");
    }
    if (baseline.value().get().provisional()) {
      return Answer.cannotSay(
          "the limits are provisional: needs "
              + StreamControl.FEWEST_FOR_SETTLED_LIMITS
              + " results, has "
              + baseline.value().get().results());
    }
    boolean judgesPairs =
        pairsStop && baseline.value().get().readingsRangeUpper().value().isPresent();
    return Answer.of(results * perResult + (judgesPairs ? pairs * BEYOND_THREE_DEVIATIONS : 0));
  }
}
