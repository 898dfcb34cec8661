package org.quietline.stats.distribution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.sample.Summary;

class StudentizedRangeTest {
  private static final Class<?> SUBJECT = StudentizedRange.class;
  private final Reference computed = Reference.read("studentized-range");

  @Test
  void chancesAreSciPys() {
    List<double[]> rows = computed.rows("/expected/rows", 90);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      double got = new StudentizedRange((int) r[0], r[1]).below(r[2]);
      String what = "chance below " + r[2] + " of " + (int) r[0] + " groups with " + r[1];
      if (i % 5 == 0) {
        computed.check(SUBJECT, what, "/expected/rows/" + i + "/3", got, 1e-10);
      }
      assertEquals(r[3], got, 1e-10, what);
    }
  }

  @Test
  void upperTailIsTheDoubleIntegral() {
    List<double[]> rows = computed.rows("/expected/exact", 6);
    for (int i = 0; i < rows.size(); i++) {
      double[] r = rows.get(i);
      StudentizedRange range = new StudentizedRange((int) r[0], r[1]);
      String of = r[2] + " of " + (int) r[0] + " groups with " + r[1];
      computed.check(
          SUBJECT, "chance above " + of, "/expected/exact/" + i + "/3", range.above(r[2]));
      assertRelative(r[2], range.exceededWith(r[3]), 1e-10, "back to " + of);
      assertEquals(1 - r[3], range.below(r[2]), 1e-11, of);
    }
  }

  @Test
  void publishedTable() {
    Reference table = Reference.read("studentized-range-table-5pct");
    assertEquals(26, table.at("/expected").size());
    for (Map.Entry<String, JsonNode> cell : table.at("/expected").properties()) {
      String key = cell.getKey();
      String[] part = key.split(",", 2);
      double df = part[1].equals("inf") ? Double.POSITIVE_INFINITY : Double.parseDouble(part[1]);
      double q = new StudentizedRange(Integer.parseInt(part[0]), df).exceededWith(0.05);
      table.check(SUBJECT, "5 % point of " + key, "/expected/" + key, q, 0.00501);
    }
  }

  /** Twelve ends of the simultaneous intervals of the handbook's four groups of five. */
  @Test
  void handbookIntervalsOfAllPairs() {
    Reference nist = Reference.read("nist-7.4.7.1-tukey");
    List<double[]> groups = nist.rows("/data/groups", 4);
    double square = 0;
    for (double[] group : groups) {
      square += Math.pow(Summary.of(group).deviation(), 2) / 4;
    }
    double q = new StudentizedRange(4, 16).exceededWith(0.05);
    nist.check(SUBJECT, "5 % point, 4 groups with 16", "/crosscheck/own/q_0.95_4_16", q);
    double half = q * Math.sqrt(square / 5);
    for (String pair : List.of("2-1", "3-1", "1-4", "2-3", "3-4", "2-4")) {
      double first = Summary.meanOf(groups.get(pair.charAt(0) - '1'));
      double second = Summary.meanOf(groups.get(pair.charAt(2) - '1'));
      String at = "/expected/intervals_95/" + pair;
      double middle = first - second;
      nist.check(SUBJECT, "lower end of " + pair, at + "/0", middle - half, 0.00501);
      nist.check(SUBJECT, "upper end of " + pair, at + "/1", middle + half, 0.00501);
    }
  }

  @Test
  void twoGroupsAreStudents() {
    for (double df : new double[] {1.7, 4, 5000}) {
      for (double p : new double[] {1e-6, 0.7}) {
        double t = Math.sqrt(2) * Student.exceededWith(p / 2, df);
        assertRelative(t, new StudentizedRange(2, df).exceededWith(p), 1e-10, p + " with " + df);
      }
    }
  }

  @Test
  void knownDeviationIsTheRangeItself() {
    StudentizedRange known = new StudentizedRange(5, Double.POSITIVE_INFINITY);
    assertEquals(new NormalRange(5).below(2), known.below(2));
    assertEquals(new NormalRange(5).exceededWith(0.05), known.exceededWith(0.05));
    assertRelative(known.above(4), new StudentizedRange(5, 1e8).above(4), 1e-6, "nearly");
    assertEquals(0, known.below(0));
    assertEquals(1, new StudentizedRange(3, 4).above(0), 1e-12);
  }

  @Test
  void moreGroupsWidenIt() {
    double before = 0;
    for (int k = 2; k <= 20; k += 6) {
      double q = new StudentizedRange(k, 7.5).quantile(0.9);
      assertTrue(q > before, k + " groups");
      before = q;
    }
  }

  @Test
  void simulatedRangesAreCutOffAsOftenAsItSays() {
    SplittableRandom random = new SplittableRandom(71);
    double q = new StudentizedRange(4, 6).exceededWith(0.1);
    int beyond = 0;
    int trials = 20_000;
    for (int i = 0; i < trials; i++) {
      double[] means = Simulation.normal(random, 4);
      double squares = 0;
      for (double z : Simulation.normal(random, 6)) {
        squares += z * z;
      }
      Arrays.sort(means);
      beyond += (means[3] - means[0]) / Math.sqrt(squares / 6) > q ? 1 : 0;
    }
    Simulation.assertShare(0.1, beyond, trials);
  }
}
