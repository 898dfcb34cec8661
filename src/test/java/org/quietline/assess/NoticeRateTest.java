package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.quietline.assess.NoticeRate.Question;

class NoticeRateTest {
  @Test
  void points_times_chance_are_expected() {
    NoticeRate rate = new NoticeRate(Question.PAIR_BEYOND, "PM-1", 40, 0.0027, 1);
    assertEquals(0.108, rate.expected(), 1e-12);
  }

  @Test
  void what_cannot_be_is_refused() {
    assertEquals(
        "3 notices of 2 points",
        assertThrows(
                IllegalArgumentException.class,
                () -> new NoticeRate(Question.PAIR_BEYOND, "PM-1", 2, 0.01, 3))
            .getMessage());
    assertEquals(
        "chance must be from 0 to 1, is NaN",
        assertThrows(
                IllegalArgumentException.class,
                () -> new NoticeRate(Question.PAIR_BEYOND, "PM-1", 2, Double.NaN, 1))
            .getMessage());
  }
}
