package org.quietline.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.sample.Summary;

class QStatisticsTest {
  private static List<OptionalDouble> trace(QStatistics q, double... values) {
    return q.trace(values, new boolean[values.length]);
  }

  private static final Reference REFERENCE = Reference.read("q-statistics");

  private static void check(String name, QStatistics q) {
    var statistics = trace(q, REFERENCE.numbers("/data/values", 20));
    for (int i = 0; i < 20; i++) {
      String at = "/expected/" + name + "/" + i;
      JsonNode expected = REFERENCE.at(at);
      assertEquals(expected.isNull(), statistics.get(i).isEmpty(), name + " " + i);
      if (!expected.isNull()) {
        // to 1e-11 of a deviation: the values' own rounding shows in the eleventh digit
        double got = statistics.get(i).getAsDouble();
        REFERENCE.check(QStatistics.class, name + ", value " + (i + 1), at, got, 1e-11);
      }
    }
  }

  @Test
  void known() {
    check("known", QStatistics.known(0.2, 0.004));
  }

  @Test
  void unknownCentre() {
    check("unknownCentre", QStatistics.knownDeviation(0.004));
  }

  @Test
  void unknownDeviation() {
    check("unknownDeviation", QStatistics.knownCentre(0.2));
  }

  @Test
  void unknown() {
    check("unknown", QStatistics.unknown());
  }

  /** Two values at ±1 about a known centre make s₀ = 1, so the third is its own t. */
  @Test
  void farTails() {
    JsonNode rows = REFERENCE.at("/expected/far");
    for (int row = 0; row < rows.size(); row++) {
      double t = rows.get(row).get(0).doubleValue();
      int freedom = rows.get(row).get(1).intValue();
      double[] values = new double[freedom + 1];
      for (int i = 0; i < freedom; i++) {
        values[i] = i % 2 == 0 ? 1 : -1;
      }
      values[freedom] = t;
      var statistics = trace(QStatistics.knownCentre(0), values);
      REFERENCE.check(
          QStatistics.class,
          "t = " + t + " with " + freedom,
          "/expected/far/" + row + "/2",
          statistics.get(freedom).getAsDouble());
    }
  }

  /** A slow walk that summarises all values before each afresh. */
  @RepeatedTest(10)
  void agreesWithSummariesMadeAfresh(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    double offset = random.nextDouble(-1e6, 1e6);
    double[] values = Arrays.stream(Simulation.normal(random, 40)).map(v -> offset + v).toArray();
    boolean[] restarts = new boolean[40];
    restarts[23] = true;
    var statistics = QStatistics.unknown().trace(values, restarts);
    for (int i = 0; i < 40; i++) {
      int start = i < 23 ? 0 : 23;
      if (i - start < 2) {
        assertTrue(statistics.get(i).isEmpty());
        continue;
      }
      Summary before = Summary.of(Arrays.copyOfRange(values, start, i));
      int m = before.n();
      double t = Math.sqrt(m / (m + 1.0)) * (values[i] - before.mean()) / before.deviation();
      double above = Student.above(Math.abs(t), m - 1);
      double expected = Math.signum(t) * Normal.exceededWith(above);
      assertEquals(expected, statistics.get(i).getAsDouble(), 1e-8);
    }
    if (repetition.getCurrentRepetition() == 1) {
      Summary before = Summary.of(Arrays.copyOfRange(values, 23, 39));
      double t = Math.sqrt(16 / 17.0) * (values[39] - before.mean()) / before.deviation();
      Evidence.own(
          QStatistics.class,
          "last of 17 values after a restart, offset " + Math.round(offset),
          "summary made afresh",
          Math.signum(t) * Normal.exceededWith(Student.above(Math.abs(t), 15)),
          statistics.get(39).getAsDouble(),
          1e-8);
    }
  }

  @RepeatedTest(10)
  void moveNeitherWithShiftNorScale(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(50 + repetition.getCurrentRepetition());
    double[] values = Simulation.normal(random, 25);
    double shift = random.nextDouble(-5, 5);
    double scale = random.nextDouble(0.2, 5);
    double[] moved = Arrays.stream(values).map(v -> shift + scale * v).toArray();
    double[] turned = Arrays.stream(values).map(v -> -v).toArray();
    var before = trace(QStatistics.unknown(), values);
    var after = trace(QStatistics.unknown(), moved);
    var mirrored = trace(QStatistics.unknown(), turned);
    for (int i = 2; i < 25; i++) {
      assertEquals(before.get(i).getAsDouble(), after.get(i).getAsDouble(), 1e-10);
      assertEquals(before.get(i).getAsDouble(), -mirrored.get(i).getAsDouble(), 1e-14);
    }
  }

  @Test
  void withoutSpreadBeforeThereIsNone() {
    var statistics = trace(QStatistics.unknown(), 0.1, 0.1, 0.1, 0.3, 0.1);
    assertTrue(statistics.subList(0, 4).stream().allMatch(OptionalDouble::isEmpty));
    assertTrue(statistics.get(4).isPresent());
    var about = trace(QStatistics.knownCentre(0.1), 0.1, 0.2, 0.3);
    assertTrue(about.get(0).isEmpty() && about.get(1).isEmpty() && about.get(2).isPresent());
    assertEquals(OptionalDouble.of(0.0), trace(QStatistics.unknown(), 1, 3, 2).get(2));
    assertTrue(trace(QStatistics.unknown()).isEmpty());
    var known =
        QStatistics.knownDeviation(2).trace(new double[] {1, 9}, new boolean[] {true, true});
    assertTrue(known.get(0).isEmpty() && known.get(1).isEmpty());
  }
}
