package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

/** Expectations worked out by hand from the rule of ISO 80000-1, annex B, rule A. */
class NumbersTest {
  private final Numbers numbers = new Numbers(3);

  @Test
  void aTieGoesToTheEvenDigit() {
    assertEquals("0.180", numbers.result(0.1805));
    assertEquals("0.182", numbers.result(0.1815));
    assertEquals("0.181", numbers.result(0.18051));
  }

  @Test
  void resultsAndLimitsKeepTheirDecimals() {
    assertEquals("0.200", numbers.result(0.2));
    assertEquals("0.1893", numbers.fine(0.18934));
    assertEquals("412", new Numbers(0).result(411.7));
  }

  @Test
  void aMinusIsAMinusSignAndZeroHasNone() {
    assertEquals("−0.012", numbers.result(-0.0118));
    assertEquals("0.000", numbers.result(-0.0001));
    assertEquals("+0.0120", numbers.signed(0.012));
    assertEquals("−0.0120", numbers.signed(-0.012));
    assertEquals("0.0000", numbers.signed(0.00001));
    assertEquals("−0.180", Numbers.written(new BigDecimal("-0.180")));
  }

  @Test
  void uncertaintiesHaveTwoSignificantDigits() {
    assertEquals("0.0021", Numbers.uncertainty(0.002134));
    assertEquals("0.0020", Numbers.uncertainty(0.002));
    assertEquals("0.10", Numbers.uncertainty(0.0996));
    assertEquals("5100", Numbers.uncertainty(5123.4));
    assertEquals("0.93", Numbers.uncertainty(0.93));
    assertEquals("0", Numbers.uncertainty(0));
  }

  @Test
  void aChangeIsPrintedToThePlaceOfItsUncertainty() {
    assertEquals("+0.00043", Numbers.signedLike(0.000432, 0.00017));
    assertEquals("0.00000", Numbers.signedLike(0.0000015, 0.00039));
    assertEquals("−0.00038", Numbers.signedLike(-0.000384, 0.00039));
    assertEquals("+3", Numbers.signedLike(3.2, 0));
  }

  @Test
  void chancesNeverReadAsCertainWhenTheyAreNot() {
    assertEquals("31 %", Numbers.percent(0.312));
    assertEquals("4.2 %", Numbers.percent(0.042));
    assertEquals("0.4 %", Numbers.percent(0.004));
    assertEquals("under 0.1 %", Numbers.percent(0.0004));
    assertEquals("over 99.9 %", Numbers.percent(0.9996));
    assertEquals("99.5 %", Numbers.percent(0.995));
    assertEquals("0 %", Numbers.percent(0));
    assertEquals("100 %", Numbers.percent(1));
  }

  @Test
  void oneIsSingular() {
    assertEquals("1 day", Numbers.count(1, "day", "days"));
    assertEquals("0 days", Numbers.count(0, "day", "days"));
  }
}
