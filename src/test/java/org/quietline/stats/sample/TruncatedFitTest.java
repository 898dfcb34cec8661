package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Coverage;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class TruncatedFitTest {
  private static final Class<?> SUBJECT = TruncatedFit.class;
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final double RECOGNISED = 3;

  private final Reference file = Reference.read("truncated-normal");

  private OptionalDouble limit(String pointer) {
    return file.at(pointer).isNull() ? NONE : OptionalDouble.of(file.number(pointer));
  }

  private double[] values(String pointer) {
    double[] values = new double[file.at(pointer).size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = file.number(pointer + "/" + i);
    }
    return values;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4})
  void populationsAndGainsOfCutSamples(int index) {
    String in = "/data/cases/" + index;
    TruncatedFit fit =
        TruncatedFit.of(
            Summary.of(values(in + "/values")), limit(in + "/lower"), limit(in + "/upper"));
    String out = "/expected/rows/" + index + "/";
    // the likelihood is flat at its top: places are good to the root of what the height is
    file.check(SUBJECT, "mean " + index, out + 0, fit.mean(), 1e-5 * file.number(out + 1));
    file.check(
        SUBJECT, "deviation " + index, out + 1, fit.deviation(), 1e-5 * file.number(out + 1));
    file.check(SUBJECT, "gain " + index, out + 2, fit.gain(), 1e-6);
  }

  /** Whole samples that happen to keep a limit are seldom taken for cut ones. */
  @Test
  void wholeSamplesAreSeldomTakenForCutOnes() {
    int trials = Coverage.trials(1000, 20_000);
    SplittableRandom random = new SplittableRandom(20261127);
    for (int n : new int[] {20, 60, 200}) {
      for (double limit : new double[] {1.5, 2, 3}) {
        int taken = 0;
        int kept = 0;
        for (int i = 0; i < trials; i++) {
          double[] values = Simulation.normal(random, n);
          if (java.util.Arrays.stream(values).max().getAsDouble() <= limit) {
            kept++;
            TruncatedFit fit = TruncatedFit.of(Summary.of(values), NONE, OptionalDouble.of(limit));
            taken += fit.gain() > RECOGNISED ? 1 : 0;
          }
        }
        // of all samples: one cut by chance looks as one cut on purpose does
        Coverage.check(
            SUBJECT,
            "whole sample not taken for cut, limit " + limit,
            "n = " + n,
            0.99,
            trials - taken,
            trials,
            0.99,
            1);
        assertTrue(kept <= trials);
      }
    }
  }

  @Test
  void halfOfAPopulationIsRecognised() {
    SplittableRandom random = new SplittableRandom(3);
    int recognised = 0;
    for (int i = 0; i < 200; i++) {
      double[] values =
          java.util.Arrays.stream(Simulation.normal(random, 80)).map(v -> -Math.abs(v)).toArray();
      recognised +=
          TruncatedFit.of(Summary.of(values), NONE, OptionalDouble.of(0)).gain() > RECOGNISED
              ? 1
              : 0;
    }
    assertTrue(recognised > 180, "recognised " + recognised + " of 200");
  }

  @Test
  void scaleAndSideChangeNothing() {
    double[] values = values("/data/cases/0/values");
    double[] turned = java.util.Arrays.stream(values).map(v -> 100 - 1000 * v).toArray();
    TruncatedFit one = TruncatedFit.of(Summary.of(values), NONE, OptionalDouble.of(0.24));
    TruncatedFit other = TruncatedFit.of(Summary.of(turned), OptionalDouble.of(100 - 240), NONE);
    assertEquals(one.gain(), other.gain(), 1e-6);
    assertEquals(1000 * one.deviation(), other.deviation(), 1e-2);
  }

  @Test
  void wrongWordsOfACallerAreNamed() {
    Summary values = Summary.of(1, 2, 3, 4);
    assertThrows(IllegalArgumentException.class, () -> TruncatedFit.of(values, NONE, NONE));
    assertThrows(
        IllegalArgumentException.class, () -> TruncatedFit.of(values, NONE, OptionalDouble.of(2)));
    assertThrows(
        IllegalArgumentException.class,
        () -> TruncatedFit.of(Summary.of(1, 1, 1), NONE, OptionalDouble.of(2)));
    assertThrows(
        IllegalArgumentException.class,
        () -> TruncatedFit.of(Summary.of(1, 2), NONE, OptionalDouble.of(3)));
  }
}
