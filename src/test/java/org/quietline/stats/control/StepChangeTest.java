package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class StepChangeTest {
  private static final Reference EXACT = Reference.read("step-changes");

  private static void check(String name, int size) {
    StepChange got =
        StepChange.before(
            EXACT.number("/data/" + name + "/centre"),
            EXACT.numbers("/data/" + name + "/values", size));
    String at = "/expected/" + name + "/";
    EXACT.check(StepChange.class, name + ", place", at + 0, got.first());
    EXACT.check(StepChange.class, name + ", count", at + 1, got.count());
    EXACT.check(StepChange.class, name + ", shift", at + 2, got.shift());
    EXACT.check(StepChange.class, name + ", gain", at + 3, got.gain());
  }

  @Test
  void the_likeliest_place_is_that_of_the_whole_likelihood() {
    check("imAndNew", 26);
    check("one", 1);
    check("drawn", 18);
    check("rising", 6);
    check("slip", 4);
  }

  @Test
  void of_equal_places_the_earliest_is_taken() {
    assertEquals(new StepChange(0, 2, 0, 0), StepChange.before(1, 1, 1));
    assertEquals(0, StepChange.before(0, 4, 0, 0, 4).first());
  }

  @Test
  void refusals_say_what_is_wrong() {
    assertEquals(
        "needs at least 1 value, has 0",
        assertThrows(IllegalArgumentException.class, () -> StepChange.before(0)).getMessage());
    assertEquals(
        "value 2 is NaN, not a usable number",
        assertThrows(IllegalArgumentException.class, () -> StepChange.before(0, 1, Double.NaN))
            .getMessage());
    assertEquals(
        "centre is Infinity",
        assertThrows(
                IllegalArgumentException.class,
                () -> StepChange.before(Double.POSITIVE_INFINITY, 1))
            .getMessage());
  }

  /** How often the place is at most one off, of steps in the middle of twenty values. */
  private static double near(double step, SplittableRandom random) {
    int hits = 0;
    int trials = 4000;
    for (int trial = 0; trial < trials; trial++) {
      double[] values = Simulation.normal(random, 20);
      for (int i = 10; i < 20; i++) {
        values[i] += step;
      }
      hits += Math.abs(StepChange.before(0, values).first() - 10) <= 1 ? 1 : 0;
    }
    return (double) hits / trials;
  }

  @Test
  void steps_are_placed_as_well_as_the_description_says() {
    SplittableRandom random = new SplittableRandom(1998);
    double one = near(1, random);
    double two = near(2, random);
    assertTrue(one > 0.45 && one < 0.60, "a step of 1 deviation: " + one);
    assertTrue(two > 0.80 && two < 0.95, "a step of 2 deviations: " + two);
  }
}
