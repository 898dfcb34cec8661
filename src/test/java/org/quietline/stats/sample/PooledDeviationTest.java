package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;

class PooledDeviationTest {
  private static final Class<?> SUBJECT = PooledDeviation.class;

  @Test
  void handbookRepeatability() {
    Reference nist = Reference.read("nist-2.4.4.1-repeatability-pooling");
    List<double[]> rows =
        StreamSupport.stream(nist.at("/data/rows").spliterator(), false)
            .map(r -> new double[] {Reference.number(r.get(8)), Reference.number(r.get(9))})
            .toList();
    assertEquals(12, rows.size());
    double[] deviations = rows.stream().mapToDouble(r -> r[0]).toArray();
    double[] freedom = rows.stream().mapToDouble(r -> r[1]).toArray();
    for (int i = 0; i < rows.size(); i++) {
      PooledDeviation one =
          PooledDeviation.ofDeviations(new double[] {deviations[i]}, new double[] {freedom[i]});
      double squares = one.degreesOfFreedom() * one.deviation() * one.deviation();
      nist.check(SUBJECT, "squares of set " + (i + 1), "/expected/SS_i/" + i, squares, 0.0000051);
    }
    PooledDeviation pooled = PooledDeviation.ofDeviations(deviations, freedom);
    nist.check(SUBJECT, "degrees of freedom", "/expected/df", pooled.degreesOfFreedom());
    nist.check(SUBJECT, "pooled deviation", "/expected/s1", pooled.deviation());
    double squares = pooled.degreesOfFreedom() * Math.pow(pooled.deviation(), 2);
    // the printed total is off by 2e-5, see the file's notes
    nist.check(SUBJECT, "total of squares", "/expected/SS", squares, 0.00003);
  }

  /** 351 degrees of freedom beside all 217 rows, as the handbook has it; see the file's notes. */
  @Test
  void handbookLimitOfABalance() {
    Reference nist = Reference.read("nist-2.2.3-mass-precision-chart");
    double[] deviations = nist.numbers("/data/residual_sd", 217);
    double[] freedom = new double[217];
    Arrays.fill(freedom, 3);
    PooledDeviation all = PooledDeviation.ofDeviations(deviations, freedom);
    nist.check(SUBJECT, "all sets", "/crosscheck/own/pooled_sd_all_217", all.deviation());
    PooledDeviation printed = new PooledDeviation(351, all.deviation());
    double limit = printed.upperLimitOfNext(3, 0.01);
    nist.check(SUBJECT, "1 % limit", "/expected/upper_control_limit", limit, 0.00051);
    nist.check(SUBJECT, "1 % limit, all digits", "/crosscheck/own/limit_all", limit);
    int above = nist.at("/crosscheck/own/n_above_limit").asInt();
    assertEquals(above, Arrays.stream(deviations).filter(s -> s > limit).count());
    assertEquals(0.06692, all.upperLimitOfNext(3, 0.01), 0.000005);
  }

  @Test
  void multipliersOfTheInterval() {
    Reference reference = Reference.read("deviation-interval");
    List<double[]> rows = reference.rows("/expected/rows", 7);
    for (int i = 0; i < rows.size(); i++) {
      PooledDeviation one = new PooledDeviation(rows.get(i)[0], 1);
      Interval interval = one.interval(0.95);
      String at = "/expected/rows/" + i;
      String with = " with " + rows.get(i)[0];
      reference.check(SUBJECT, "lower 95 % end" + with, at + "/1", interval.lower());
      reference.check(SUBJECT, "upper 95 % end" + with, at + "/2", interval.upper());
      reference.check(SUBJECT, "upper 95 % bound" + with, at + "/3", one.upperBound(0.95));
    }
  }

  @Test
  void groupsOfPairsAreDuplicates() {
    List<double[]> groups = List.of(new double[] {1, 3}, new double[] {7, 6}, new double[] {4, 4});
    PooledDeviation pooled = PooledDeviation.ofGroups(groups);
    assertRelative(DuplicateDeviation.of(2, 1, 0).deviation(), pooled.deviation(), 1e-15, "pairs");
    assertEquals(3, pooled.degreesOfFreedom());
  }

  @Test
  void unequalGroupsByHand() {
    // squares 2 of 1, 2, 3; 8 of 10, 14; none of the single value
    List<double[]> groups =
        List.of(new double[] {1, 2, 3}, new double[] {10, 14}, new double[] {100});
    PooledDeviation pooled = PooledDeviation.ofGroups(groups);
    assertEquals(3, pooled.degreesOfFreedom());
    assertRelative(Math.sqrt(10 / 3.0), pooled.deviation(), 1e-15, "deviation");
    assertEquals(new Interval(0, 0), new PooledDeviation(3, 0).interval(0.9));
  }
}
