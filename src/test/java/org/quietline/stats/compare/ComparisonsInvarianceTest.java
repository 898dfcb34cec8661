package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.quietline.stats.Simulation;

/** What a shift, a scale, a mirror or another order may and may not change. */
class ComparisonsInvarianceTest {
  private double[] values = {};
  private double[] moved = {};
  private double[] mirrored = {};
  private double[] backwards = {};

  private void draw(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(500 + repetition.getCurrentRepetition());
    values = Simulation.normal(random, 6 + random.nextInt(20));
    double shift = random.nextDouble(-5, 5);
    double scale = random.nextDouble(0.2, 5);
    moved = Arrays.stream(values).map(v -> shift + scale * v).toArray();
    mirrored = Arrays.stream(values).map(v -> -v).toArray();
    backwards =
        IntStream.range(0, values.length).mapToDouble(i -> values[values.length - 1 - i]).toArray();
  }

  @RepeatedTest(8)
  void outliersStayWhereTheyAre(RepetitionInfo repetition) {
    draw(repetition);
    same(Grubbs.of(Suspect.EITHER, values), Grubbs.of(Suspect.EITHER, moved));
    same(Grubbs.of(Suspect.LARGEST, values), Grubbs.of(Suspect.SMALLEST, mirrored));
    same(Dixon.of(Suspect.EITHER, values), Dixon.of(Suspect.EITHER, moved));
    same(Dixon.of(Suspect.LARGEST, values), Dixon.of(Suspect.SMALLEST, mirrored));
    same(GrubbsPair.of(Suspect.EITHER, values), GrubbsPair.of(Suspect.EITHER, moved));
    same(GrubbsPair.of(Suspect.LARGEST, values), GrubbsPair.of(Suspect.SMALLEST, mirrored));
    Grubbs back = Grubbs.of(Suspect.EITHER, backwards);
    assertEquals(Grubbs.of(Suspect.EITHER, values).place(), values.length - 1 - back.place());
  }

  private static void same(OutlierTest before, OutlierTest after) {
    assertEquals(before.places(), after.places());
    assertRelative(before.statistic(), after.statistic(), 1e-9, "statistic");
    assertEquals(before.chance(), after.chance(), 1e-8 * before.chance() + 1e-12);
    assertEquals(before.certainty(), after.certainty());
  }

  @RepeatedTest(8)
  void orderIsAllThatCountsForOrder(RepetitionInfo repetition) {
    draw(repetition);
    assertRelative(
        VonNeumannTest.of(values).chance(), VonNeumannTest.of(moved).chance(), 1e-8, "ratio");
    assertRelative(
        VonNeumannTest.of(values).chance(), VonNeumannTest.of(backwards).chance(), 1e-9, "back");
    assertEquals(RunsTest.aboutMedian(values), RunsTest.aboutMedian(moved));
    assertEquals(RunsTest.aboutMedian(values).runs(), RunsTest.aboutMedian(backwards).runs());
  }

  /** The farther out a value is moved, the rarer it is, and its neighbours do not change that. */
  @RepeatedTest(8)
  void fartherIsRarer(RepetitionInfo repetition) {
    draw(repetition);
    double top = Arrays.stream(values).max().orElseThrow();
    double[] far = values.clone();
    double single = 1;
    double gap = 1;
    for (int step = 1; step <= 4; step++) {
      far[0] = top + step;
      double nextSingle = Grubbs.of(Suspect.LARGEST, far).chance();
      double nextGap = Dixon.of(Suspect.LARGEST, far).chance();
      assertTrue(nextSingle <= single && nextGap <= gap, "step " + step);
      single = nextSingle;
      gap = nextGap;
    }
  }

  @RepeatedTest(5)
  void widerLevelsGiveWiderIntervals(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    ObservedShare share = new ObservedShare(random.nextInt(1, 30), 30);
    ObservedCount count = new ObservedCount(random.nextInt(1, 50), 2);
    double width = 0;
    double reach = 0;
    for (double level : new double[] {0.5, 0.8, 0.95, 0.999}) {
      var exact = share.exactInterval(level);
      var rate = count.exactInterval(level);
      assertTrue(exact.upper() - exact.lower() > width && exact.contains(share.share()));
      assertTrue(rate.upper() - rate.lower() > reach && rate.contains(count.rate()));
      width = exact.upper() - exact.lower();
      reach = rate.upper() - rate.lower();
    }
  }
}
