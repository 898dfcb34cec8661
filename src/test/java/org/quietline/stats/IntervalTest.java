package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class IntervalTest {
  @Test
  void holdsItsEnds() {
    Interval interval = new Interval(1, 2);
    assertTrue(interval.contains(1));
    assertTrue(interval.contains(2));
    assertFalse(interval.contains(0.999));
    assertFalse(interval.contains(2.001));
    assertFalse(interval.contains(Double.NaN));
  }

  @Test
  void refusesWrongOrderAndNaN() {
    assertEquals(
        "interval from 2.0 to 1.0",
        assertThrows(IllegalArgumentException.class, () -> new Interval(2, 1)).getMessage());
    assertEquals(
        "interval from NaN to 1.0",
        assertThrows(IllegalArgumentException.class, () -> new Interval(Double.NaN, 1))
            .getMessage());
  }
}
