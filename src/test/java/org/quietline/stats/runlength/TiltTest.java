package org.quietline.stats.runlength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.runlength.Chart.Side;

/** Chances that are tilted from those of a mean of zero, against chances that are made anew. */
class TiltTest {
  private static final Line RISING = new Line(1, 0, 0.3, 1.1, 4, 9);
  private static final Line FALLING = new Line(1, 0, 2, 5.5, 5.8);

  /** Sources anywhere, ways that begin and end anywhere on two lines, one of them falling. */
  private static Ways ways(SplittableRandom random, int sources) {
    Ways ways = new Ways(1 + RISING.size() + FALLING.size());
    for (int i = 0; i < sources; i++) {
      double high = random.nextDouble(1, 9);
      ways.source(-random.nextDouble(0, 3), high, -random.nextDouble(0, 1), high / 2 - 1);
      double from = random.nextInt(3) == 0 ? 0 : random.nextDouble(-1, 9);
      double to = random.nextInt(3) == 0 ? 9 : random.nextDouble(-1, 10);
      ways.go(RISING, 1, from, to, random.nextDouble(-1, 9), 1);
      double least = random.nextDouble(0, 3);
      ways.go(FALLING, 1 + RISING.size(), least, 5.8, random.nextDouble(-1, 6), -1);
    }
    return ways;
  }

  @Test
  void agreesWithChancesMadeAnew() {
    SplittableRandom random = new SplittableRandom(4);
    int sources = 60;
    Ways ways = ways(random, sources);
    Tilt tilt = ways.tilt();
    double[] standing = random.doubles(sources).toArray();
    double total = Arrays.stream(standing).sum();
    Arrays.setAll(standing, i -> standing[i] / total);
    for (double mean : new double[] {0, 0.001, -0.4, 1.7, -3, 6, -9, 12}) {
      assertTrue(ways.tilts(mean));
      Transition anew = ways.at(mean);
      double[] expected = anew.after(standing);
      double[] next = new double[expected.length];
      tilt.add(standing, mean, next);
      next[0] += ways.zero(standing, mean);
      double[] got = Transition.normalized(next);
      for (int t = 0; t < got.length; t++) {
        assertEquals(expected[t], got[t], 1e-13, "target " + t + ", mean " + mean);
      }
      assertRelative(anew.signalFrom(standing), ways.signal(standing, mean), 1e-14, "signal");
    }
  }

  @Test
  void farMeansAreNotTilted() {
    Ways near = ways(new SplittableRandom(1), 3);
    assertTrue(near.tilts(-12));
    assertFalse(near.tilts(12.1));
    assertFalse(near.tilts(Double.NaN));
    Ways far = new Ways(100);
    far.source(-1, 1, 0, 0);
    far.go(new Line(1, 0, 50), 1, 0, 50, 49, 1);
    assertTrue(far.tilts(6));
    assertFalse(far.tilts(-6.1));
  }

  /** One sum that drifts slowly, on one Gauss–Legendre rule, each density made anew. */
  @ParameterizedTest
  @CsvSource({"0.5, 4, 0.02", "0.25, 6, 0.004", "0, 5, -0.01", "1, 2.5, 0.03", "0.5, 3, -0.3"})
  void agreesWithOneRuleForTheWholeSum(double reference, double interval, double drift) {
    Chart chart = Chart.cumulativeSum(reference, interval, 0, Side.UPPER);
    RunLengthDistribution got = RunLength.of(chart, Change.drift(drift));
    double[] quiet = onOneRule(reference, interval, drift, 2000);
    for (int n : new int[] {1, 10, 50, 100, 500, 1999}) {
      assertEquals(1 - quiet[n], got.chanceWithin(n), 1e-11, chart + " within " + n);
    }
    if (drift > 0) {
      Evidence.own(
          Change.Drift.class,
          "average, " + chart + ", drift " + drift,
          "density on one Gauss rule of 60 points",
          Arrays.stream(quiet).sum(),
          got.average(),
          1e-10);
    }
  }

  private static double[] onOneRule(double reference, double interval, double drift, int values) {
    GaussRule rule = new GaussRule(60);
    int size = rule.size();
    double[] y = new double[size];
    Arrays.setAll(y, i -> (rule.point(i) + 1) * interval / 2);
    double zero = 1;
    double[] above = new double[size];
    double[] quiet = new double[values + 1];
    quiet[0] = 1;
    for (int n = 1; n <= values; n++) {
      double step = drift * n - reference;
      double nextZero = zero * Normal.below(-step);
      double[] next = new double[size];
      for (int i = 0; i < size; i++) {
        double mass = above[i] * rule.weight(i) * interval / 2;
        nextZero += mass * Normal.below(-step - y[i]);
        next[i] += zero * Normal.density(y[i] - step);
        for (int j = 0; j < size; j++) {
          next[j] += mass * Normal.density(y[j] - y[i] - step);
        }
      }
      zero = nextZero;
      above = next;
      quiet[n] = zero;
      for (int i = 0; i < size; i++) {
        quiet[n] += above[i] * rule.weight(i) * interval / 2;
      }
    }
    return quiet;
  }
}
