package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class FailureRateTest {
  private static final Class<FailureRate> SUBJECT = FailureRate.class;

  @Test
  void boundsOfCountedWindows() {
    Reference set = Reference.read("interval-counting");
    JsonNode rows = set.at("/data/rows");
    for (int i = 0; i < rows.size(); i++) {
      int windows = rows.get(i).get(0).asInt();
      int failures = rows.get(i).get(1).asInt();
      double days = rows.get(i).get(2).asDouble();
      FailureRate rate = new FailureRate(failures, windows * days);
      String at = "/expected/rows/" + i + "/";
      String what = failures + " of " + windows + " windows fail: ";
      set.check(SUBJECT, what + "rate at most", at + 0, rate.upperBound(0.95));
      set.check(SUBJECT, what + "30 days sound at least", at + 1, rate.reliability(30, 0.95));
      set.check(SUBJECT, what + "days for 95 %", at + 3, rate.longest(0.95, 0.95));
      double share = new ObservedShare(windows - failures, windows).lowerBound(0.95);
      set.check(ObservedShare.class, what + "share sound at least", at + 2, share, 1e-10);
    }
  }

  @Test
  void fiftyNineCleanWindowsShowNinetyFivePercent() {
    Reference set = Reference.read("interval-counting");
    assertEquals(set.at("/expected/cleanFor95").asInt(), FailureRate.cleanTries(0.95, 0.95));
    assertTrue(Math.pow(0.95, 59) <= 0.05 && Math.pow(0.95, 58) > 0.05);
    assertEquals(1, FailureRate.cleanTries(0.5, 0.5));
    assertEquals(22, FailureRate.cleanTries(0.9, 0.9));
  }

  /** Failures that come at a steady rate are counted for a fixed time. */
  @Test
  void theBoundHoldsTheRateAtLeastAsOftenAsItSays() {
    Random random = new Random(20261126);
    for (double expected : new double[] {0.3, 1, 3, 8}) {
      int held = 0;
      int trials = 4000;
      for (int i = 0; i < trials; i++) {
        int failures = -1;
        for (double time = 0; time <= expected; time -= Math.log1p(-random.nextDouble())) {
          failures++;
        }
        held += new FailureRate(failures, 100).upperBound(0.95) >= expected / 100 ? 1 : 0;
      }
      assertTrue(held >= 0.94 * trials, expected + ": " + held);
    }
  }

  @Test
  void wrongWordsOfACallerAreNamed() {
    assertThrows(IllegalArgumentException.class, () -> new FailureRate(-1, 1));
    assertThrows(IllegalArgumentException.class, () -> new FailureRate(0, 0));
    FailureRate rate = new FailureRate(0, 360);
    assertThrows(IllegalArgumentException.class, () -> rate.upperBound(1));
    assertThrows(IllegalArgumentException.class, () -> rate.reliability(0, 0.95));
    assertThrows(IllegalArgumentException.class, () -> rate.longest(0, 0.95));
    assertThrows(IllegalArgumentException.class, () -> FailureRate.cleanTries(1, 0.95));
  }
}
