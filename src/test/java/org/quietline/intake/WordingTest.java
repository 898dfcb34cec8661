package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The small helpers of every sentence: nearest names, excerpts. */
class WordingTest {
  /** Distances counted by hand: letters put in, left out, changed, or swapped with a neighbour. */
  @ParameterizedTest
  @CsvSource({
    "unit, unit, 0",
    "UNIT, unit, 0",
    "units, unit, 1",
    "unt, unit, 1",
    "umit, unit, 1",
    "uint, unit, 1",
    "kitten, sitting, 3",
    "'', abc, 3",
    "ca, abc, 3",
  })
  void countsSlips(String one, String other, int distance) {
    assertEquals(distance, NearestName.distance(one, other));
    assertEquals(distance, NearestName.distance(other, one));
  }

  @Test
  void theNearestNameIsOneThatCouldBeASlip() {
    assertEquals(Optional.of("PM-1"), NearestName.of("PM-2", List.of("PM-1", "PM-3")));
    assertEquals(Optional.empty(), NearestName.of("zinc", List.of("total-glycerin")));
    assertEquals(Optional.empty(), NearestName.of("x".repeat(61), List.of("x".repeat(60))));
    assertEquals("", NearestName.hint("x", List.of()));
  }

  @Test
  void excerptsAreShortAndPrint() {
    assertEquals("a b c\uFFFDd", Excerpt.of("a\nb\tc\0d"));
    assertEquals("x".repeat(80), Excerpt.of("x".repeat(80)));
    assertEquals("x".repeat(79) + "…", Excerpt.of("x".repeat(81)));
    assertEquals("\uFFFD\uFFFD\uFFFD", Excerpt.of("\uD800\uFFFF\u202E"));
    String wide = Excerpt.of("\uD83D\uDE00".repeat(60));
    assertTrue(wide.length() <= 80 && wide.endsWith("…"), wide);
    assertEquals("a b", Excerpt.strip("\u00A0\uFEFF a b\u200B\n"));
  }
}
