package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.compare.Equivalence.Verdict;
import org.quietline.stats.sample.Summary;

class EquivalenceTest {
  private static final Class<?> SUBJECT = Equivalence.class;
  private final Reference reference = Reference.read("equivalence-tests");

  @Test
  void threeLotDifferences() {
    double[] lots = reference.numbers("/data/lots", 3);
    MeanTest paired = MeanTest.paired(lots, new double[3]);
    String at = "/expected/lots/";
    reference.check(SUBJECT, "difference", at + "difference", paired.difference());
    reference.check(SUBJECT, "error", at + "standardError", paired.standardError());
    Equivalence close = new Equivalence(paired, 0.003);
    Interval interval = close.interval(0.05);
    reference.check(SUBJECT, "lower", at + "lower90", interval.lower());
    reference.check(SUBJECT, "upper", at + "upper90", interval.upper());
    check("lots/at.003", close);
    assertEquals(Verdict.UNDECIDED, close.at(0.05));
    Equivalence wide = new Equivalence(paired, 0.005);
    check("lots/at.005", wide);
    assertEquals(Verdict.EQUIVALENT, wide.at(0.05));
    assertTrue(wide.chance() < 0.05 && close.chance() > 0.05);
  }

  @Test
  void oneAndTwoSamples() {
    Summary first = Summary.of(reference.numbers("/data/first", 5));
    Summary second = Summary.of(reference.numbers("/data/second", 8));
    check("one", new Equivalence(MeanTest.oneSample(first, 12), 0.2));
    check("welch", new Equivalence(MeanTest.welch(first, second), 0.6));
  }

  private void check(String name, Equivalence test) {
    String at = "/expected/" + name + "/";
    reference.check(SUBJECT, name + " lower", at + 0, test.chanceAgainstLower());
    reference.check(SUBJECT, name + " upper", at + 1, test.chanceAgainstUpper());
  }

  /** A difference can be sure, and still within the margins or beyond them. */
  @Test
  void threeVerdicts() {
    MeanTest test = new MeanTest(1, 0.1, 20);
    assertEquals(Verdict.EQUIVALENT, new Equivalence(test, 1.5).at(0.05));
    assertEquals(Verdict.DIFFERENT, new Equivalence(test, 0.5).at(0.05));
    assertEquals(Verdict.UNDECIDED, new Equivalence(test, 1.1).at(0.05));
    MeanTest below = new MeanTest(-1, 0.1, 20);
    assertEquals(Verdict.EQUIVALENT, new Equivalence(below, 1.5).at(0.05));
    assertEquals(Verdict.DIFFERENT, new Equivalence(below, 0.5).at(0.05));
    assertEquals(Verdict.UNDECIDED, new Equivalence(below, 0.9).at(0.05));
  }

  @Test
  void theChanceIsWhereTheVerdictTurns() {
    Equivalence test = new Equivalence(new MeanTest(0.3, 0.4, 7), 1);
    assertEquals(Verdict.EQUIVALENT, test.at(test.chance() * 1.0001));
    assertEquals(Verdict.UNDECIDED, test.at(test.chance() * 0.9999));
    assertEquals(test.chanceAgainstUpper(), test.chance());
  }
}
