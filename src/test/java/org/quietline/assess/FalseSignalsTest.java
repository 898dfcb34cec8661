package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.WeightedMean;

/**
 * What the pages say about false stops, by simulation with a fixed seed: new normal results against
 * limits of three deviations and the weighted mean at 0.4, started anew every fifth result.
 */
class FalseSignalsTest {
  private static final int STREAMS = 6000;
  private static final int NEW_RESULTS = 40;

  private static double[] normal(SplittableRandom random, int n) {
    return random.doubles(n).map(u -> inverse(Math.max(u, 1e-16))).toArray();
  }

  /** The normal quantile by Commons Math, not by the code under test. */
  private static double inverse(double chance) {
    return Math.sqrt(2) * org.apache.commons.math3.special.Erf.erfInv(2 * chance - 1);
  }

  private static double shareWithSignal(boolean known) {
    SplittableRandom random = new SplittableRandom(20261031);
    long signals = 0;
    for (int stream = 0; stream < STREAMS; stream++) {
      ControlLimits limits = ControlLimits.fromMovingRange(normal(random, 20));
      double centre = known ? 0 : limits.centre();
      double deviation = known ? 1 : limits.deviation();
      double[] values = normal(random, NEW_RESULTS);
      boolean[] restarts = new boolean[NEW_RESULTS];
      for (int i = 0; i < NEW_RESULTS; i += 5) {
        restarts[i] = true;
      }
      List<WeightedMean.Point> trace =
          new WeightedMean(centre, deviation, 0.4, 3).trace(values, restarts);
      for (int i = 0; i < NEW_RESULTS; i++) {
        WeightedMean.Point mean = trace.get(i);
        boolean single = Math.abs(values[i] - centre) > 3 * deviation;
        boolean weighted = mean.mean() < mean.lower() || mean.mean() > mean.upper();
        signals += single || weighted ? 1 : 0;
      }
    }
    return signals / (double) (STREAMS * NEW_RESULTS);
  }

  @Test
  void exact_limits_give_about_the_rate_that_is_printed() {
    // one in 234.5 counts first signals only; a run of them counts each, hence a little more
    assertEquals(1 / 234.5, shareWithSignal(true), 0.25 / 234.5);
  }

  @Test
  void limits_from_twenty_results_give_about_four_times_as_many() {
    double ratio = shareWithSignal(false) * 234.5;
    assertTrue(ratio > 3.2 && ratio < 5, "ratio " + ratio);
  }
}
