package org.quietline.stats.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class PassingBablokTest {
  private static final Class<?> SUBJECT = PassingBablok.class;

  @Test
  void agreesWithExactFractions() {
    Reference lines = Reference.read("passing-bablok");
    assertEquals(6, lines.at("/expected/cases").size());
    for (int i = 0; i < 6; i++) {
      String at = "/expected/cases/" + i + "/";
      PassingBablok line =
          PassingBablok.fit(numbers(lines.at(at + "x")), numbers(lines.at(at + "y"))).orElseThrow();
      String name = lines.at(at + "name").asText() + ": ";
      lines.check(SUBJECT, name + "slope", at + "slope", line.slope());
      lines.check(SUBJECT, name + "intercept", at + "intercept", line.intercept());
      assertEquals(lines.at(at + "slopes").asInt(), line.slopes(), name);
      assertEquals(lines.at(at + "shift").asInt(), line.shift(), name);
      Interval slope = line.slopeInterval(0.95).orElseThrow();
      Interval intercept = line.interceptInterval(0.95).orElseThrow();
      lines.check(SUBJECT, name + "slope, lower", at + "slopeLower95", slope.lower());
      lines.check(SUBJECT, name + "slope, upper", at + "slopeUpper95", slope.upper());
      lines.check(SUBJECT, name + "intercept, lower", at + "interceptLower95", intercept.lower());
      lines.check(SUBJECT, name + "intercept, upper", at + "interceptUpper95", intercept.upper());
      PassingBablok.Linearity test = line.linearity().orElseThrow();
      assertEquals(lines.at(at + "above").asInt(), test.above(), name);
      assertEquals(lines.at(at + "below").asInt(), test.below(), name);
      lines.check(SUBJECT, name + "linearity", at + "statistic", test.statistic());
      lines.check(SUBJECT, name + "chance", at + "chance", test.chance());
    }
  }

  @Test
  void kolmogorovsTail() {
    Reference lines = Reference.read("passing-bablok");
    for (int i = 0; i < 10; i++) {
      String row = "/expected/kolmogorov/rows/" + i;
      double t = lines.number(row + "/0");
      lines.check(Kolmogorov.class, "tail beyond " + t, row + "/1", Kolmogorov.above(t));
    }
    assertEquals(1, Kolmogorov.above(0));
    assertEquals(1, Kolmogorov.above(0.05));
  }

  /** All slopes in exact arithmetic, sorted slowly, on coarse numbers with many ties. */
  @Test
  void agreesWithASlowSecondCalculation() {
    SplittableRandom random = new SplittableRandom(11);
    int agreed = 0;
    for (int trial = 0; trial < 200; trial++) {
      int n = 5 + random.nextInt(8);
      double[] x = new double[n];
      double[] y = new double[n];
      for (int i = 0; i < n; i++) {
        x[i] = random.nextInt(30) / 10.0;
        y[i] = BigDecimal.valueOf(x[i]).doubleValue() + random.nextInt(9) / 10.0;
        y[i] = Math.round(10 * y[i]) / 10.0;
      }
      Optional<BigDecimal> slow = slowSlope(x, y);
      if (slow.isPresent()) {
        double slope = PassingBablok.fit(x, y).orElseThrow().slope();
        assertRelative(slow.get().doubleValue(), slope, 1e-13, Arrays.toString(x));
        agreed++;
        if (trial < 3) {
          Evidence.own(
              SUBJECT,
              "slope of coarse points " + trial,
              "all slopes in decimals",
              slow.get().doubleValue(),
              slope,
              1e-13);
        }
      }
    }
    assertTrue(agreed > 150, () -> "too few compared");
  }

  /**
   * The paper's way: sort all, move up by the number below −1; none where it meets the vertical.
   */
  private static Optional<BigDecimal> slowSlope(double[] x, double[] y) {
    List<BigDecimal> slopes = new ArrayList<>();
    BigDecimal upright = new BigDecimal("1e9");
    for (int i = 0; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        BigDecimal dx = BigDecimal.valueOf(x[i]).subtract(BigDecimal.valueOf(x[j]));
        BigDecimal dy = BigDecimal.valueOf(y[i]).subtract(BigDecimal.valueOf(y[j]));
        if (dx.signum() == 0) {
          if (dy.signum() != 0) {
            slopes.add(upright);
          }
        } else if (dx.add(dy).signum() != 0) {
          slopes.add(dy.divide(dx, MathContext.DECIMAL128));
        }
      }
    }
    slopes.sort(null);
    int below = (int) slopes.stream().filter(s -> s.compareTo(BigDecimal.ONE.negate()) < 0).count();
    int n = slopes.size();
    BigDecimal first = slopes.get((n - 1) / 2 + below);
    BigDecimal second = slopes.get(n / 2 + below);
    return first.compareTo(upright) == 0 || second.compareTo(upright) == 0
        ? Optional.empty()
        : Optional.of(first.add(second).divide(BigDecimal.valueOf(2), MathContext.DECIMAL128));
  }

  @Test
  void exchangingBothGivesTheSameLine() {
    SplittableRandom random = new SplittableRandom(3);
    int unlike = 0;
    for (int trial = 0; trial < 100; trial++) {
      int n = 11; // 55 slopes, an odd number
      double[] x = Simulation.normal(random, n);
      double[] y = Simulation.normal(random, n);
      PassingBablok line = PassingBablok.fit(x, y).orElseThrow();
      PassingBablok other = PassingBablok.fit(y, x).orElseThrow();
      assertRelative(1 / line.slope(), other.slope(), 1e-12, "slope");
      Optional<Interval> interval = line.slopeInterval(0.95);
      Optional<Interval> exchanged = other.slopeInterval(0.95);
      if (interval.isPresent() && exchanged.isPresent() && interval.get().lower() > 0) {
        assertRelative(1 / interval.get().upper(), exchanged.get().lower(), 1e-12, "lower");
        assertRelative(1 / interval.get().lower(), exchanged.get().upper(), 1e-12, "upper");
      }
      double one = line.linearity().orElseThrow().statistic();
      double two = other.linearity().orElseThrow().statistic();
      unlike += line.slope() > 0 && Math.abs(one - two) > 1e-12 ? 1 : 0;
    }
    assertEquals(0, unlike);
  }

  @Test
  void evenNumberOfSlopesIsExchangeableButForTheMean() {
    double[] x = {1, 2, 3.2, 4.1, 5.3};
    double[] y = {1.2, 1.9, 3.5, 4, 5.1};
    double slope = PassingBablok.fit(x, y).orElseThrow().slope();
    double other = PassingBablok.fit(y, x).orElseThrow().slope();
    assertEquals(1 / slope, other, 1e-3);
  }

  @Test
  void followsShiftAndCommonScale() {
    double[] x = {1, 2, 3.2, 4.1, 5.3, 7};
    double[] y = {1.2, 1.9, 3.5, 4, 5.1, 7.7};
    PassingBablok line = PassingBablok.fit(x, y).orElseThrow();
    PassingBablok moved =
        PassingBablok.fit(
                Arrays.stream(x).map(v -> 4 * v + 64).toArray(),
                Arrays.stream(y).map(v -> 4 * v - 32).toArray())
            .orElseThrow();
    assertRelative(line.slope(), moved.slope(), 1e-12, "slope");
    assertEquals(4 * line.intercept() - 32 - 64 * line.slope(), moved.intercept(), 1e-10);
    double[] mirroredX = Arrays.stream(x).map(v -> -v).toArray();
    double[] mirroredY = Arrays.stream(y).map(v -> -v).toArray();
    PassingBablok mirrored = PassingBablok.fit(mirroredX, mirroredY).orElseThrow();
    assertEquals(line.slope(), mirrored.slope());
    assertEquals(-line.intercept(), mirrored.intercept(), 1e-14);
  }

  @Test
  void orderOfPointsDoesNotMatterEvenWithUprightPairs() {
    double[] x = {1, 1, 2, 2, 3, 4, 4, 6};
    double[] y = {3, 1, 2, 5, 3, 4, 7, 6};
    PassingBablok line = PassingBablok.fit(x, y).orElseThrow();
    SplittableRandom random = new SplittableRandom(8);
    for (int trial = 0; trial < 20; trial++) {
      int[] order = shuffled(random, x.length);
      PassingBablok other =
          PassingBablok.fit(
                  IntStream.of(order).mapToDouble(i -> x[i]).toArray(),
                  IntStream.of(order).mapToDouble(i -> y[i]).toArray())
              .orElseThrow();
      assertEquals(line.slope(), other.slope());
      assertEquals(line.shift(), other.shift());
      assertEquals(line.linearity(), other.linearity());
    }
  }

  private static int[] shuffled(SplittableRandom random, int n) {
    int[] order = IntStream.range(0, n).toArray();
    for (int i = n - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      int kept = order[i];
      order[i] = order[j];
      order[j] = kept;
    }
    return order;
  }

  @Test
  void oneWildPointHardlyMatters() {
    double[] x = IntStream.range(1, 21).mapToDouble(i -> i).toArray();
    double[] y = IntStream.range(1, 21).mapToDouble(i -> 1.1 * i + (i % 3) * 0.05).toArray();
    double before = PassingBablok.fit(x, y).orElseThrow().slope();
    y[19] = 500;
    assertEquals(before, PassingBablok.fit(x, y).orElseThrow().slope(), 0.01);
  }

  @Test
  void fallingPointsHaveTheirSlope() {
    double[] x = {1, 2, 3, 4, 5};
    PassingBablok steep = PassingBablok.fit(x, new double[] {10, 8, 6, 4, 2}).orElseThrow();
    assertEquals(-2, steep.slope());
    assertEquals(12, steep.intercept());
    assertEquals(10, steep.shift());
    assertEquals(new Interval(-2, -2), steep.slopeInterval(0.95).orElseThrow());
    assertEquals(Optional.empty(), steep.linearity());
    PassingBablok flat = PassingBablok.fit(x, new double[] {5, 4.5, 4, 3.5, 3}).orElseThrow();
    assertEquals(-0.5, flat.slope());
    assertEquals(0, flat.shift());
  }

  @Test
  void noLineWithoutSlopesOrUpright() {
    double[] rising = {1, 2, 3};
    double[] same = {2, 2, 2};
    assertEquals(Optional.empty(), PassingBablok.fit(same, same));
    assertEquals(Optional.empty(), PassingBablok.fit(same, rising), "upright");
    double[] falling = {0.3, 0.2, 0.1};
    assertEquals(
        Optional.empty(),
        PassingBablok.fit(new double[] {0.1, 0.2, 0.3}, falling),
        "only slopes of -1, but for rounding");
    assertEquals(0, PassingBablok.fit(rising, same).orElseThrow().slope());
  }

  /** Slopes 2, 1/3·…: the middle two have the vertical between them. */
  @Test
  void middleAcrossTheVerticalIsHalfway() {
    double[] x = {0, 1, 0.5, 1.5};
    double[] y = {0, 3, 6, 9};
    PassingBablok line = PassingBablok.fit(x, y).orElseThrow();
    // slopes 3, 12, 6, -6, 12, 6: in order 3, 6, 6, 12, 12, -6
    assertEquals(9, line.slope(), 1e-14);
    assertEquals(1, line.shift());
    // slopes 1, 4, -2, -5: vertical between 4 and -5
    double[] u = {0, 1, 2};
    double[] v = {0, 4, -1};
    // slopes 4, -0.5, -5: in order -0.5, 4, -5
    assertEquals(4, PassingBablok.fit(u, v).orElseThrow().slope());
    double[] four = {0, 1, 2, 0};
    double[] with = {0, 4, -1, 4};
    // more: upright, 0 and -2.5: in order -0.5, 0, 4, upright, -5, -2.5
    double halfway = Math.tan((Math.atan(4) + Math.PI / 2) / 2);
    assertEquals(halfway, PassingBablok.fit(four, with).orElseThrow().slope(), 1e-12);
  }

  @Test
  void middleBetweenUprightAndFallingIsHalfwayToo() {
    // slopes in order 2, upright, -3, -1.5 ...: the middle two are upright and -3
    double[] x = {0, 0, 1};
    double[] y = {0, 5, 2};
    // slopes upright, 2, -3: the median is upright
    assertEquals(Optional.empty(), PassingBablok.fit(x, y));
    double[] x4 = {0, 0, 1, 1};
    double[] y4 = {0, 5, 2, 2};
    // coinciding pair left out: 2, 2, upright, -3, -3
    assertEquals(Optional.empty(), PassingBablok.fit(x4, y4));
    double[] x5 = {0, 1, 0, 1};
    double[] y5 = {0, 3, 4, 1};
    // 3, upright, 1, -1 left out, -3, upright: 1, 3, upright, upright, -3
    assertEquals(Optional.empty(), PassingBablok.fit(x5, y5));
    double[] x6 = {0, 1, 2, 3};
    double[] y6 = {0, 9, -3, 7};
    // 9, -1.5, 7/3, -12, -1 left out, 10: 7/3, 9, 10, -12, -1.5
    assertEquals(10, PassingBablok.fit(x6, y6).orElseThrow().slope(), 1e-14);
    double[] x7 = {0, 1, 2, 3};
    double[] y7 = {0, 9, -3, -9};
    // 9, -1.5, -3, -12, -9, -6: 9, -12, -9, -6, -3, -1.5
    assertEquals(-7.5, PassingBablok.fit(x7, y7).orElseThrow().slope(), 1e-14);
    double[] y8 = {0, 9, 19, 5};
    // 9, 9.5, 5/3, 10, -2, -14: 5/3, 9, 9.5, 10, -14, -2
    assertEquals(9.75, PassingBablok.fit(x7, y8).orElseThrow().slope(), 1e-14);
    double[] y9 = {0, 8, -9, -7};
    // 8, -4.5, -7/3, -17, -7.5, 2: 2, 8, -17, -7.5, -4.5, -7/3
    assertEquals(-12.25, PassingBablok.fit(x7, y9).orElseThrow().slope(), 1e-14);
    double[] y10 = {0, 8, 6, -9};
    // 8, 3, -3, -2, -8.5, -15: 3, 8, -15, -8.5, -3, -2
    assertEquals(-11.75, PassingBablok.fit(x7, y10).orElseThrow().slope(), 1e-14);
    double[] y11 = {0, 8, 9, -9};
    // 8, 4.5, -3, 1, -8.5, -18: 1, 4.5, 8, -18, -8.5, -3: the vertical between 8 and -18
    double turned = (Math.atan(8) + Math.PI - Math.atan(18)) / 2;
    assertEquals(Math.tan(turned), PassingBablok.fit(x7, y11).orElseThrow().slope(), 1e-10);
  }

  @Test
  void tooFewPointsHaveNoInterval() {
    double[] x = {1, 2, 3, 4};
    double[] y = {1.1, 1.9, 3.2, 4};
    PassingBablok line = PassingBablok.fit(x, y).orElseThrow();
    assertEquals(Optional.empty(), line.slopeInterval(0.95));
    assertEquals(Optional.empty(), line.interceptInterval(0.95));
    assertTrue(line.slopeInterval(0.5).isPresent());
  }

  @Test
  void intervalAcrossTheVerticalIsNone() {
    SplittableRandom random = new SplittableRandom(2);
    double[] x = Simulation.normal(random, 12);
    double[] y = Simulation.normal(random, 12);
    Optional<PassingBablok> line = PassingBablok.fit(x, y);
    assertFalse(line.orElseThrow().slopeInterval(0.95).isPresent());
    double[] upright = {1, 1, 1, 1, 1, 2, 3};
    double[] spread = {1, 2, 3, 4, 5, 2, 4};
    assertFalse(
        PassingBablok.fit(upright, spread)
            .map(p -> p.slopeInterval(0.95).isPresent())
            .orElse(false));
  }

  @Test
  void higherLevelIsWider() {
    double[] x = IntStream.range(1, 16).mapToDouble(i -> i).toArray();
    double[] y = IntStream.range(1, 16).mapToDouble(i -> i + Math.sin(9.0 * i)).toArray();
    PassingBablok line = PassingBablok.fit(x, y).orElseThrow();
    Interval narrow = line.slopeInterval(0.8).orElseThrow();
    Interval wide = line.slopeInterval(0.99).orElseThrow();
    assertTrue(wide.lower() < narrow.lower() && narrow.upper() < wide.upper());
    assertTrue(narrow.contains(line.slope()));
    assertTrue(line.interceptInterval(0.8).orElseThrow().contains(line.intercept()));
  }

  private static double[] numbers(JsonNode array) {
    double[] numbers = new double[array.size()];
    Arrays.setAll(numbers, i -> array.get(i).doubleValue());
    return numbers;
  }
}
