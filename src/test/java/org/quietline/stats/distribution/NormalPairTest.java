package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.quietline.stats.Digits.assertRelative;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;

class NormalPairTest {
  private static final Class<?> SUBJECT = NormalPair.class;
  private final Reference computed = Reference.read("normal-pair");

  @Test
  void chancesAgreeWithMpmath() {
    for (int i = 0; i < 9; i++) {
      String at = "/expected/outside/" + i;
      NormalPair pair = new NormalPair(computed.number(at + "/0"));
      double bound = computed.number(at + "/1");
      String what = "outside " + bound + " at correlation " + pair.correlation();
      computed.check(SUBJECT, what, at + "/2", pair.outside(bound));
    }
  }

  @Test
  void boundsAgreeWithMpmath() {
    for (int i = 0; i < 4; i++) {
      String at = "/expected/boundFor0.27%/" + i;
      NormalPair pair = new NormalPair(computed.number(at + "/0"));
      String what = "0.27 % bound at correlation " + pair.correlation();
      computed.check(SUBJECT, what, at + "/1", pair.bound(Normal.outside(3)));
    }
  }

  @Test
  void independentNumbersAndOneNumberAreTheEnds() {
    double one = Normal.outside(2);
    assertRelative(1 - (1 - one) * (1 - one), new NormalPair(0).outside(2), 1e-13, "independent");
    assertEquals(one, new NormalPair(1).outside(2));
    assertEquals(one, new NormalPair(-1).outside(2));
    assertEquals(3, new NormalPair(1).bound(Normal.outside(3)), 1e-12);
    assertEquals(1, new NormalPair(0.5).outside(0), 1e-12);
  }

  @Test
  void simulatedPairsFallOutsideWithTheChance() {
    SplittableRandom random = new SplittableRandom(8);
    NormalPair pair = new NormalPair(0.8);
    int trials = 200_000;
    int seen = 0;
    for (int i = 0; i < trials; i++) {
      double x = Simulation.normal(random);
      double z = 0.8 * x + 0.6 * Simulation.normal(random);
      seen += Math.abs(x) > 2 || Math.abs(z) > 2 ? 1 : 0;
    }
    Simulation.assertShare(pair.outside(2), seen, trials);
  }

  @Test
  void arguments_out_of_range_are_refused() {
    assertEquals(
        "correlation must be from -1 to 1, is NaN",
        assertThrows(IllegalArgumentException.class, () -> new NormalPair(Double.NaN))
            .getMessage());
    assertEquals(
        "bound must not be below zero, is -1.0",
        assertThrows(IllegalArgumentException.class, () -> new NormalPair(0).outside(-1))
            .getMessage());
    assertEquals(
        "chance must be between 0 and 1, is 1.0",
        assertThrows(IllegalArgumentException.class, () -> new NormalPair(0).bound(1))
            .getMessage());
  }
}
