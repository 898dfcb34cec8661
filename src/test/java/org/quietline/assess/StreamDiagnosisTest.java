package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Diagnosis.Pattern;
import org.quietline.bench.Result;
import org.quietline.stats.Simulation;

class StreamDiagnosisTest {
  private static final String[] IM_1 = {
    "0.201", "0.198", "0.205", "0.196", "0.203", "0.200", "0.194", "0.207", "0.199", "0.202",
    "0.197", "0.204", "0.193", "0.200", "0.206", "0.198", "0.201", "0.195", "0.203", "0.199"
  };

  private static Answer<Diagnosis> diagnose(TestBench bench, boolean allows) {
    Records records = bench.records();
    List<Result> results = records.streams().values().iterator().next();
    return StreamDiagnosis.of(records, results, allows);
  }

  /**
   * IM-1 goes up and down; recomputed with NumPy 2.4, its chance by two million simulated series.
   */
  @Test
  void the_practitioners_individuals_alternate() {
    Diagnosis found = diagnose(new TestBench().daily(IM_1), false).value().orElseThrow();
    assertEquals(Pattern.ALTERNATING, found.pattern());
    assertTrue(found.warns());
    assertEquals(3.200542464824547, found.vonNeumann(), 1e-9);
    assertEquals(-0.6036701135785726, found.lag1(), 1e-9);
    assertEquals(1.4679647434229086, found.deviationRatio(), 1e-9);
    assertEquals(0.001136, found.chanceSoLarge(), 0.0001);
    assertEquals(1, found.chanceSoSmall() + found.chanceSoLarge(), 1e-9);
    // 4 less the lower 1 % point of Hart (1942) for 20 values, from memory
    assertTrue(found.vonNeumann() > 4 - 1.0406);
    assertEquals(20, found.results());
    assertEquals(1, found.calibrations());
    assertEquals(OptionalDouble.empty(), found.chanceCalibrations());
    assertEquals(OptionalDouble.empty(), found.calibrationsUpper());
    assertEquals(OptionalInt.empty(), found.calibrationsNeeded());
  }

  @Test
  void what_cannot_be_diagnosed() {
    assertEquals(
        Optional.of("needs 8 results, has 7"),
        diagnose(new TestBench().daily(java.util.Arrays.copyOf(IM_1, 7)), false).why());
    TestBench equal = new TestBench();
    equal.replicates = 3;
    for (int i = 0; i < 10; i++) {
      if (i < 9) {
        equal.control(TestBench.START.plusDays(i), "0.1", "0.1", "0.1");
      } else {
        equal.control(TestBench.START.plusDays(i), "0.1", "0.1");
      }
    }
    assertEquals(Optional.of("needs results that differ"), diagnose(equal, false).why());
  }

  private static TestBench calibrations(int count, int each, String... values) {
    TestBench bench = new TestBench();
    for (int i = 0; i < count; i++) {
      bench.calibrated("C-" + i, TestBench.START.plusDays((long) i * each).minusHours(1));
    }
    return bench.daily(values);
  }

  @Test
  void drift_and_calibrations_that_differ() {
    String[] rising = new String[20];
    for (int i = 0; i < 20; i++) {
      rising[i] = String.format(Locale.ROOT, "%.3f", 0.2 + 0.001 * i + (i % 2 == 0 ? 0.001 : 0));
    }
    Diagnosis drift = diagnose(new TestBench().daily(rising), false).value().orElseThrow();
    assertEquals(Pattern.DRIFTING, drift.pattern());
    assertTrue(drift.warns());
    // 0.201 0.199 0.202 0.198 in each calibration, the second and fourth 0.01 higher
    String[] steps = new String[16];
    double[] within = {0.201, 0.199, 0.202, 0.198};
    for (int i = 0; i < 16; i++) {
      steps[i] = String.format(Locale.ROOT, "%.3f", within[i % 4] + (i / 4 % 2 == 0 ? 0 : 0.01));
    }
    Diagnosis differ = diagnose(calibrations(4, 4, steps), false).value().orElseThrow();
    assertEquals(Pattern.CALIBRATIONS_DIFFER, differ.pattern());
    assertEquals(4, differ.calibrations());
    // MSA = 4·4·0.005²/3, MSW = 1e-5/3, F = 40 with 3 and 12 degrees of freedom; SciPy 1.17.1
    assertEquals(1.589553175596409e-06, differ.chanceCalibrations().getAsDouble(), 1e-12);
    assertEquals(9.337901617314932, differ.calibrationsUpper().getAsDouble(), 1e-7);
    assertEquals(1.6171232121252104, differ.calibrationsLower().getAsDouble(), 1e-7);
    Diagnosis allowed = diagnose(calibrations(4, 4, steps), true).value().orElseThrow();
    assertEquals(Pattern.ALLOWED_FOR, allowed.pattern());
    assertFalse(allowed.warns());
  }

  /** Five calibrations of four cannot show that they hardly differ; so many could, by SciPy. */
  @Test
  void how_many_calibrations_it_takes() {
    SplittableRandom random = new SplittableRandom(5);
    Diagnosis found = new Drawn(random, 5, 4, 0).diagnosis();
    assertEquals(Pattern.NOT_SHOWN, found.pattern());
    assertEquals(OptionalInt.of(20), found.calibrationsNeeded());
  }

  /** A bench of calibrations with so many results each. */
  private record Drawn(SplittableRandom random, int count, int each, double between) {
    Diagnosis diagnosis() {
      String[] values = new String[count * each];
      double effect = 0;
      for (int i = 0; i < values.length; i++) {
        effect = i % each == 0 ? between * Simulation.normal(random) : effect;
        values[i] = String.format(Locale.ROOT, "%.4f", 100 + effect + Simulation.normal(random));
      }
      return diagnose(calibrations(count, each, values), false).value().orElseThrow();
    }
  }

  private static Map<Pattern, Integer> counted(double between, int benches) {
    SplittableRandom random = new SplittableRandom(20261112);
    Map<Pattern, Integer> counts = new EnumMap<>(Pattern.class);
    for (int i = 0; i < benches; i++) {
      counts.merge(new Drawn(random, 5, 4, between).diagnosis().pattern(), 1, Integer::sum);
    }
    return counts;
  }

  /** Twenty results over five calibrations; the shares are those of the class comment. */
  @Test
  void calibrations_that_differ_are_not_called_independent() {
    int benches = 2000;
    double[] between = {0.5, 1, 2};
    double[] independent = {0.053, 0.008, 0.001};
    // P(F(4, 15) > 4.893/(1 + 4ρ)) for ρ of 0.25, 1 and 4 by SciPy 1.17.1, less what alternates
    double[] differ = {0.0916, 0.4484, 0.8813};
    for (int i = 0; i < 3; i++) {
      Map<Pattern, Integer> counts = counted(between[i], benches);
      int seldom = counts.getOrDefault(Pattern.INDEPENDENT, 0);
      assertTrue(seldom <= 0.1 * benches, counts.toString());
      Simulation.assertShare(independent[i], seldom, benches);
      Simulation.assertShare(
          differ[i], counts.getOrDefault(Pattern.CALIBRATIONS_DIFFER, 0), benches);
    }
  }

  @Test
  void calibrations_that_do_not_differ_are_seldom_said_to() {
    Map<Pattern, Integer> counts = counted(0, 2000);
    Simulation.assertShare(0.01, counts.getOrDefault(Pattern.CALIBRATIONS_DIFFER, 0), 2000);
    Simulation.assertShare(0.15, counts.getOrDefault(Pattern.INDEPENDENT, 0), 2000);
  }
}
