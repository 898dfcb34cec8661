package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.quietline.assess.PairedAgreement.Point;
import org.quietline.assess.PairedComparison.Kind;
import org.quietline.assess.PairedComparison.Verdict;
import org.quietline.bench.Method;
import org.quietline.bench.Method.Allowance;
import org.quietline.bench.Role;
import org.quietline.stats.Coverage;

class PairedComparisonsTest {
  private final TestBench made = new TestBench();

  private Method method(String margin) {
    made.allowance = Optional.of(new Allowance(new BigDecimal(margin), false));
    return made.bench().settings().methods().get(0);
  }

  private PairedComparison lots(String margin, double... differences) {
    return PairedComparisons.compared(
        method(margin), Kind.REAGENT_LOT, "L1", "L2", points(differences));
  }

  /** Samples about 0.2 with these differences. */
  private static List<Point> points(double... differences) {
    return Arrays.stream(differences).mapToObj(d -> new Point(0.2 + d, 0.2)).toList();
  }

  /** LOT-1 of the practitioner: 0.00133, 90 % interval −0.00218 to +0.00484. */
  @Test
  void theLotsOfThePractitioner() {
    PairedComparison narrow = lots("0.003", 0.003, -0.001, 0.002);
    assertEquals(0.00133, narrow.mean(), 5e-6);
    assertEquals(-0.00218, narrow.intervals().value().orElseThrow().of90().lower(), 5e-6);
    assertEquals(0.00484, narrow.intervals().value().orElseThrow().of90().upper(), 5e-6);
    assertEquals(Optional.of(Verdict.UNDECIDED), narrow.verdict().value());
    assertEquals(Optional.of(Verdict.ALIKE), lots("0.005", 0.003, -0.001, 0.002).verdict().value());
    // t(0.95, n − 1)·0.0020817/√n must be at most 0.003 − 0.00133: 0.00171 for 6, 0.00153 for 7
    assertEquals(OptionalInt.of(7), narrow.needed());
  }

  @Test
  void aLargeDifferenceIsDifferentAndNoNumberWouldMakeItAlike() {
    PairedComparison far = lots("0.003", 0.010, 0.011, 0.009, 0.010);
    assertEquals(Optional.of(Verdict.DIFFERENT), far.verdict().value());
    assertEquals(OptionalInt.empty(), far.needed());
  }

  @Test
  void oneSampleAndDifferencesAllAlikeSayNothing() {
    assertEquals(Optional.of("needs 2 samples, has 1"), lots("0.003", 0.001).verdict().why());
    assertTrue(lots("0.003", 0.3 - 0.2, 0.2 - 0.1).verdict().value().isEmpty());
  }

  /** Samples measured again by another person, with another lot; controls do not count. */
  @Test
  void samplesMeasuredInTwoWaysArePaired() {
    for (int i = 0; i < 3; i++) {
      String reading = "0.20" + i;
      made.result(
          TestBench.START.plusDays(i), Role.PRODUCT, "B-" + i, "RO", Optional.of("L1"), reading);
      made.result(
          TestBench.START.plusDays(i).plusHours(5),
          Role.RETEST,
          "B-" + i,
          "ML",
          Optional.of("L2"),
          "0.21" + 2 * i);
      made.control(TestBench.START.plusDays(i).plusHours(6), reading);
    }
    made.product(TestBench.START.plusDays(5), "B-7", "0.2");
    made.outside("B-0", "0.204", "");
    Records records = made.records();
    List<PairedComparison> found =
        PairedComparisons.ask(records, OutsideComparisons.differences(records));
    assertEquals(
        List.of(Kind.LABORATORY, Kind.REAGENT_LOT, Kind.PERSON),
        found.stream().map(PairedComparison::kind).toList());
    assertEquals(1, found.get(0).pairs());
    assertEquals(0.205 - 0.204, found.get(0).mean(), 1e-12);
    PairedComparison lot = found.get(1);
    assertEquals("L1", lot.one());
    assertEquals("L2", lot.other());
    assertEquals(3, lot.pairs());
    assertEquals(-0.011, lot.mean(), 1e-12);
    assertEquals(0.001, lot.deviation(), 1e-12);
    assertEquals(0.011, found.get(2).mean(), 1e-12);
  }

  /** Two ways that differ by exactly the margin are called alike with at most 5 %. */
  @Test
  void aWrongClaimOfLikenessIsRare() {
    Random random = new Random(4);
    int trials = Coverage.trials(2000, 40_000);
    for (int n : new int[] {3, 6, 12}) {
      Method method = method("0.004");
      int claims = 0;
      for (int i = 0; i < trials; i++) {
        double[] differences =
            random.doubles(n).map(u -> 0.004 + 0.001 * random.nextGaussian()).toArray();
        claims +=
            PairedComparisons.compared(method, Kind.PERSON, "A", "B", points(differences))
                    .verdict()
                    .value()
                    .equals(Optional.of(Verdict.ALIKE))
                ? 1
                : 0;
      }
      Coverage.check(
          PairedComparison.class,
          "no claim of likeness at the margin",
          n + " samples",
          0.95,
          trials - claims,
          trials,
          0.95,
          1);
    }
  }
}
