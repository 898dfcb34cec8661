package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.quietline.assess.CalibrationDecision.Question;
import org.quietline.assess.SettlingTests.Tests;
import org.quietline.stats.Simulation;
import org.quietline.stats.mixed.GroupedPoints;
import org.quietline.stats.mixed.LineOutlook;

/**
 * Tests that would settle a decision, by the program and by trying one number after the other with
 * the straight line of a textbook: with one window the line is the ordinary one, and a further
 * result that lies on it moves nothing but N, the mean day, the squares of days and the degrees of
 * freedom.
 */
class SettlingTestsTest {
  private static final double ALLOWANCE = 10;
  private static final double SAFE = 0.05;

  /** One window as it is known today. */
  private record Window(List<Double> days, List<Double> values, int today, int expiry) {

    double followedTo() {
      return Collections.max(days);
    }

    Answer<Tests> asked() {
      LineOutlook outlook =
          LineOutlook.of(
              GroupedPoints.ofOneOrMore(array(days), array(values), new int[days.size()]),
              expiry,
              1e-9);
      LineOutlook.GroupLine line = outlook.line(0);
      return new SettlingTests(
              new Question(
                  line::at, outlook.groupSlope(0), ALLOWANCE, SAFE, today, expiry, followedTo()),
              line)
          .find();
    }

    private static double[] array(List<Double> numbers) {
      return numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** What is known after some further results on the line. */
    Known after(List<Long> further) {
      double[] all =
          DoubleStream.concat(
                  days.stream().mapToDouble(d -> d),
                  further.stream().mapToDouble(Long::doubleValue))
              .toArray();
      double middle = days.stream().mapToDouble(d -> d).average().orElseThrow();
      double height = values.stream().mapToDouble(v -> v).average().orElseThrow();
      double squares = 0;
      double products = 0;
      for (int i = 0; i < days.size(); i++) {
        squares += (days.get(i) - middle) * (days.get(i) - middle);
        products += (days.get(i) - middle) * values.get(i);
      }
      double slope = products / squares;
      double rest = 0;
      for (int i = 0; i < days.size(); i++) {
        double off = values.get(i) - height - slope * (days.get(i) - middle);
        rest += off * off;
      }
      double middleThen = Arrays.stream(all).average().orElseThrow();
      double squaresThen = Arrays.stream(all).map(d -> (d - middleThen) * (d - middleThen)).sum();
      return new Known(
          slope,
          height - slope * middle,
          rest / (days.size() - 2),
          all.length,
          middleThen,
          squaresThen,
          Math.max(followedTo(), further.isEmpty() ? 0 : Collections.max(further)));
    }

    private boolean settles(List<Long> further) {
      return after(further).settles(today, expiry);
    }

    /** The first number of tests, spread evenly to the last day in time, that settles it. */
    Optional<List<Long>> searched() {
      for (int n = 1; n <= Math.min(6, lastInTime() - today); n++) {
        List<Long> days = evenly(n);
        if (settles(days)) {
          return Optional.of(days);
        }
      }
      return Optional.empty();
    }

    /** A fifth of the validity before expiry; past that the day before expiry. */
    int lastInTime() {
      int early = expiry - Math.max(1, expiry / 5);
      return early > today ? early : expiry - 1;
    }

    /** In whole numbers: half a day is rounded up. */
    private List<Long> evenly(int n) {
      List<Long> days = new ArrayList<>();
      long left = lastInTime() - (long) today;
      for (long i = 1; i <= n; i++) {
        days.add(today + (2 * left * i + n) / (2L * n));
      }
      return days;
    }
  }

  /** A straight line with N points and what is known of it. */
  private record Known(
      double slope,
      double start,
      double variance,
      int points,
      double middle,
      double squares,
      double followedTo) {
    private double height(double day) {
      return start + slope * day;
    }

    private double errorAt(double day) {
      return Math.sqrt(variance * (1.0 / points + (day - middle) * (day - middle) / squares));
    }

    private TDistribution student() {
      return new TDistribution(points - 2.0);
    }

    double chanceBeyond(double day) {
      double error = errorAt(day);
      return student().cumulativeProbability((height(day) - ALLOWANCE) / error)
          + student().cumulativeProbability((-ALLOWANCE - height(day)) / error);
    }

    private double otherSide(double value, double error) {
      return student().cumulativeProbability(-Math.abs(value) / error);
    }

    boolean settles(int today, int expiry) {
      boolean safe = true;
      for (int day = today; day <= expiry; day++) {
        safe &= chanceBeyond(day) <= SAFE;
      }
      if (safe) {
        return followedTo >= expiry * 2 / 3.0;
      }
      boolean outward = Math.abs(height(expiry)) >= Math.abs(height(today));
      return otherSide(height(expiry), errorAt(expiry)) < 0.05
          || (outward && otherSide(slope, Math.sqrt(variance / squares)) < 0.05)
          || otherSide(height(today), errorAt(today)) < 0.025;
    }
  }

  /** Three to six results up to today that drift a little and scatter a lot. */
  private static Window window(SplittableRandom random) {
    int expiry = 3 + random.nextInt(40);
    int today = 1 + random.nextInt(expiry);
    int results = 3 + random.nextInt(4);
    double scatter = 5 * random.nextDouble();
    double slope = 12 * (random.nextDouble() - 0.5) / expiry;
    List<Double> days = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < results; i++) {
      days.add(today * (i + random.nextDouble()) / results);
      values.add(slope * days.get(i) + scatter * Simulation.normal(random));
    }
    return new Window(days, values, today, expiry);
  }

  @Test
  void number_days_and_chance_are_those_that_a_search_finds() {
    SplittableRandom random = new SplittableRandom(41);
    Map<Integer, Integer> seen = new TreeMap<>();
    for (int i = 0; i < 500; i++) {
      Window window = window(random);
      if (window.settles(List.of())) {
        continue;
      }
      Optional<List<Long>> searched = window.searched();
      Answer<Tests> asked = window.asked();
      assertEquals(searched, asked.value().map(Tests::days), window.toString());
      seen.merge(searched.map(List::size).orElse(0), 1, Integer::sum);
      asked
          .value()
          .ifPresent(
              t ->
                  assertEquals(
                      window.after(t.days()).chanceBeyond(window.expiry()), t.chance(), 1e-9));
    }
    for (int n = 0; n <= 6; n++) {
      assertTrue(seen.getOrDefault(n, 0) > 0, n + " tests were never the answer: " + seen);
    }
  }

  /** Values of k, -2k and k: a level line with a residual variance of 6k². */
  private static Window level(double k, double lastDay, int today) {
    return new Window(List.of(0.0, lastDay / 2, lastDay), List.of(k, -2 * k, k), today, 30);
  }

  /**
   * With days 0, 10, 20 and 24 the mean day is 13.5 and their squares come to 347; of two degrees
   * of freedom {@code P(|t| > x) = 1 - x/√(x² + 2)}.
   */
  @Test
  void one_test_a_fifth_of_the_validity_before_expiry_narrows_a_level_line_enough() {
    Tests tests = level(0.9, 20, 20).asked().value().orElseThrow();
    assertEquals(List.of(24L), tests.days());
    double x = 10 / (0.9 * Math.sqrt(6 * (1 / 4.0 + 16.5 * 16.5 / 347)));
    assertEquals(1 - x / Math.sqrt(x * x + 2), tests.chance(), 1e-9);
    assertTrue(x > 4.303, "beyond the 97.5 % point of t with two degrees of freedom");
  }

  /** One test more: days 22 and 24, and the mean day 15.2. */
  @Test
  void a_little_more_scatter_takes_a_second_test_halfway() {
    Tests tests = level(1, 20, 20).asked().value().orElseThrow();
    assertEquals(List.of(22L, 24L), tests.days());
    double squares = 0 + 100 + 400 + 484 + 576 - 5 * 15.2 * 15.2;
    double x = 10 / Math.sqrt(6 * (1 / 5.0 + 14.8 * 14.8 / squares));
    // of three degrees of freedom P(|t| > x) = 1 - 2/π (arctan(x/√3) + x√3/(x² + 3))
    double inside = Math.atan(x / Math.sqrt(3)) + x * Math.sqrt(3) / (x * x + 3);
    assertEquals(1 - 2 / Math.PI * inside, tests.chance(), 1e-9);
  }

  @Test
  void a_quiet_line_that_was_not_followed_far_enough_takes_one_later_test() {
    Window window = level(0.001, 10, 10);
    assertEquals(List.of(24L), window.asked().value().orElseThrow().days());
  }

  /** Past the last fifth a test on the day before expiry is better than none. */
  @Test
  void late_in_the_window_the_day_before_expiry_is_the_last() {
    Window window = level(0.9, 25, 25);
    assertEquals(List.of(29L), window.asked().value().orElseThrow().days());
  }

  @Test
  void scatter_that_no_kit_of_tests_outweighs_is_said() {
    assertEquals(
        Optional.of("not even 6 further control results would settle it"),
        level(30, 10, 10).asked().why());
    assertEquals(
        Optional.of("not even 4 further control results would settle it"),
        level(30, 20, 20).asked().why());
    assertEquals(
        Optional.of("not even 1 further control result would settle it"),
        level(30, 28, 28).asked().why());
  }

  @Test
  void without_a_day_before_expiry_nothing_settles_it() {
    assertEquals(Optional.of("no day is left before expiry"), level(2, 29, 29).asked().why());
    assertEquals(Optional.of("no day is left before expiry"), level(2, 29, 30).asked().why());
  }
}
