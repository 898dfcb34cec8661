package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class PredictiveLimitsTest {
  private final Reference reference = Reference.read("predictive-limits");
  private final double[] values = reference.numbers("/data/values", 20);
  private final PredictiveLimits prior = new PredictiveLimits(0.2, 1, 4, 0.006);

  private void check(String name, PredictiveLimits limits) {
    String at = "/expected/" + name;
    String words = name + ": ";
    Class<?> subject = PredictiveLimits.class;
    reference.check(subject, words + "centre", at + "/centre", limits.centre());
    reference.check(subject, words + "weight", at + "/weight", limits.weight());
    reference.check(
        subject, words + "degrees", at + "/degreesOfFreedom", limits.degreesOfFreedom());
    reference.check(subject, words + "deviation", at + "/deviation", limits.deviation());
    reference.check(subject, words + "lower action", at + "/action/0", limits.action().lower());
    reference.check(subject, words + "upper action", at + "/action/1", limits.action().upper());
    reference.check(subject, words + "lower warning", at + "/warning/0", limits.warning().lower());
    reference.check(subject, words + "upper warning", at + "/warning/1", limits.warning().upper());
  }

  @Test
  void priorAlone() {
    check("prior", prior);
    check("prior", prior.updatedBy());
  }

  @Test
  void withFiveValues() {
    check("five", prior.updatedBy(Arrays.copyOf(values, 5)));
  }

  @Test
  void withTwentyValuesAtOnceOrOneByOne() {
    check("twenty", prior.updatedBy(values));
    PredictiveLimits byOne = prior;
    for (double v : values) {
      byOne = byOne.updatedBy(v);
    }
    check("twenty", byOne);
  }

  @Test
  void withoutPriorTheyArePredictionLimits() {
    check("withoutPrior", PredictiveLimits.withoutPrior(Arrays.copyOf(values, 5)));
    ControlLimits prediction = ControlLimits.prediction(values);
    PredictiveLimits predictive = PredictiveLimits.withoutPrior(values);
    assertRelative(prediction.upperAction(), predictive.action().upper(), 1e-14, "action");
    assertRelative(prediction.lowerWarning(), predictive.warning().lower(), 1e-14, "warning");
    assertRelative(prediction.upperWarning(), predictive.limits(0.05).upper(), 1e-14, "5 %");
  }

  @RepeatedTest(10)
  void shiftScaleAndOrder(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    double[] x = Simulation.normal(random, 9);
    double shift = random.nextDouble(-5, 5);
    double scale = random.nextDouble(0.2, 5);
    double[] moved = Arrays.stream(x).map(v -> shift + scale * v).toArray();
    PredictiveLimits before = new PredictiveLimits(0.3, 2.5, 3.5, 1.2).updatedBy(x);
    PredictiveLimits after =
        new PredictiveLimits(shift + scale * 0.3, 2.5, 3.5, scale * 1.2).updatedBy(moved);
    assertEquals(shift + scale * before.action().lower(), after.action().lower(), 1e-10);
    double[] sorted = x.clone();
    Arrays.sort(sorted);
    PredictiveLimits ordered = new PredictiveLimits(0.3, 2.5, 3.5, 1.2).updatedBy(sorted);
    assertRelative(before.deviation(), ordered.deviation(), 1e-13, "order");
    // the prior alone and the values alone bracket both together
    double mean = Arrays.stream(x).average().orElseThrow();
    assertEquals((2.5 * 0.3 + 9 * mean) / 11.5, before.centre(), 1e-13);
  }
}
