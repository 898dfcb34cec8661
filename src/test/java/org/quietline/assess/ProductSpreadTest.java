package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.assess.Capability.Index;
import org.quietline.assess.Capability.Shape;
import org.quietline.stats.Coverage;
import org.quietline.stats.Simulation;

class ProductSpreadTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static double[] lognormal(SplittableRandom random, int n, double sigma) {
    return Arrays.stream(Simulation.normal(random, n)).map(z -> Math.exp(sigma * z)).toArray();
  }

  /**
   * Lognormal populations with an index of 1 on the scale of logarithms: bounds of the logarithms
   * hold it, told only where the plain shape was refused.
   */
  @ParameterizedTest
  @CsvSource({"15, 1.0", "30, 0.5", "30, 1.0", "60, 0.5"})
  void boundsOfLogarithmsHoldTheTruth(int n, double sigma) {
    int trials = Coverage.trials(400, 20_000);
    SplittableRandom random = new SplittableRandom(77 + n + Math.round(sigma));
    OptionalDouble limit = OptionalDouble.of(Math.exp(3 * sigma));
    int told = 0;
    int held = 0;
    for (int i = 0; i < trials; i++) {
      ProductSpread spread = ProductSpread.Numbers.of(lognormal(random, n, sigma), NONE, limit);
      if (spread.shape() == Shape.LOGNORMAL) {
        told++;
        held += spread.index().orElseThrow().lower95() <= 1 ? 1 : 0;
      }
    }
    assertTrue(told > trials / 4, () -> "lognormal shapes are mostly missed");
    Coverage.check(
        ProductSpread.class,
        "index of logarithms, bound",
        "n = " + n + ", deviation " + sigma,
        0.95,
        held,
        told,
        0.95,
        1);
  }

  @Test
  void aNormalPopulationIsSeldomCalledLognormal() {
    SplittableRandom random = new SplittableRandom(3);
    int wrong = 0;
    for (int i = 0; i < 1000; i++) {
      double[] values = Arrays.stream(Simulation.normal(random, 30)).map(z -> 10 + z).toArray();
      wrong +=
          ProductSpread.Numbers.of(values, NONE, OptionalDouble.of(13)).shape() == Shape.NORMAL
              ? 0
              : 1;
    }
    // one in a hundred by the test's level
    assertTrue(wrong < 25, "called not normal: " + wrong);
  }

  @Test
  void aLowerLimitAtZeroIsNeverCrossedByPositiveResults() {
    double[] values = lognormal(new SplittableRandom(8), 60, 1);
    ProductSpread both =
        ProductSpread.Numbers.of(values, OptionalDouble.of(0), OptionalDouble.of(30));
    assertEquals(Shape.LOGNORMAL, both.shape());
    ProductSpread one = ProductSpread.Numbers.of(values, NONE, OptionalDouble.of(30));
    assertEquals(one.index(), both.index());
    assertTrue(ProductSpread.Numbers.of(values, OptionalDouble.of(0), NONE).index().isEmpty());
  }

  /** Numbers that only a lognormal shape fits, with two results below what could be read. */
  @Test
  void boundsChooseTheLikelierShape() {
    double[] skewed = lognormal(new SplittableRandom(8), 40, 1);
    ProductSpread.Bounded found =
        ProductSpread.Bounded.of(skewed, List.of(0.1, 0.1), 30).orElseThrow();
    assertEquals(Shape.LOGNORMAL, found.shape());
    double[] plain =
        Arrays.stream(Simulation.normal(new SplittableRandom(8), 40)).map(z -> 10 + z).toArray();
    ProductSpread.Bounded other =
        ProductSpread.Bounded.of(plain, List.of(8.0, 8.0), 13).orElseThrow();
    assertEquals(Shape.NORMAL, other.shape());
    Optional<Index> index = other.index();
    assertTrue(
        index.orElseThrow().beyond95().contains(index.get().expectedBeyondPerMillion() / 1e6));
    assertFalse(other.isCut());
    // one of 41 six deviations below the others: that is another population
    assertTrue(ProductSpread.Bounded.of(plain, List.of(4.0), 13).isEmpty());
  }
}
