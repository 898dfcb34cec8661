package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.assess.Drift.FormFrom;
import org.quietline.bench.DriftForm;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Role;
import org.quietline.stats.Reference;

/** Whether drift is an amount or a share, on simulated benches of which it is known. */
class LevelChoiceTest {
  private static final DriftModel.Scale MONTH = new DriftModel.Scale(30, 0);

  /** Windows of weekly results of 0.200 and, half as often, of 0.050. */
  private static TestBench bench(
      Random random, int windows, boolean share, boolean scatterIsShare, double low) {
    TestBench bench = new TestBench();
    bench.otherMaterials.add(
        new Material(
            "LOW",
            "tg",
            Optional.of(new BigDecimal(low).setScale(3, java.math.RoundingMode.HALF_EVEN)),
            Optional.of(new BigDecimal("0.001"))));
    for (int w = 0; w < windows; w++) {
      LocalDateTime start = TestBench.START.plusDays(30L * w);
      bench.calibrated("C" + w, start);
      double height = 0.006 * random.nextGaussian();
      double slope = 0.012 / 30 + 0.0002 * random.nextGaussian();
      for (int day = 1; day <= 29; day += 7) {
        double error = height + slope * day;
        bench.control(start.plusDays(day), read(0.2 + error + 0.002 * random.nextGaussian()));
        double less = low / 0.2;
        double value =
            low
                + (share ? less : 1) * error
                + (scatterIsShare ? less : 1) * 0.002 * random.nextGaussian();
        bench.result(
            start.plusDays(day).plusHours(1),
            Role.CONTROL,
            "LOW",
            "RO",
            Optional.empty(),
            read(value));
      }
    }
    return bench;
  }

  private static String read(double value) {
    return String.format(Locale.ROOT, "%.5f", value);
  }

  private static DriftPoints points(TestBench bench) {
    Records records = bench.records();
    return DriftPoints.of(records, TestBench.streams(records), records.calibrations());
  }

  private static LevelChoice choice(TestBench bench, Optional<DriftForm> set) {
    return LevelChoice.of(points(bench), set, MONTH);
  }

  /** Outside data as a bench: the levels are 100 times those of the data, the deviations theirs. */
  private static LevelChoice choiceOf(Reference set, int index) {
    String at = "/data/cases/" + index + "/";
    TestBench bench = new TestBench();
    bench.assigned = Optional.of(new BigDecimal("100"));
    bench.limits =
        Optional.of(
            new Method.ProductLimits(
                Optional.empty(), Optional.of(new BigDecimal("100")), Optional.empty()));
    double other =
        100
            * StreamSupport.stream(set.at(at + "levels").spliterator(), false)
                .mapToDouble(JsonNode::asDouble)
                .filter(f -> f != 1)
                .findFirst()
                .orElseThrow();
    bench.otherMaterials.add(
        new Material("OTHER", "tg", Optional.of(new BigDecimal(other)), Optional.empty()));
    int windows = set.at(at + "current").asInt() + 1;
    for (int w = 0; w < windows; w++) {
      bench.calibrated("C" + w, TestBench.START.plusDays(30L * w));
    }
    for (int i = 0; i < set.at(at + "values").size(); i++) {
      boolean second = set.at(at + "regressor/" + i).asInt() == 1;
      LocalDateTime taken =
          TestBench.START
              .plusDays(30L * set.at(at + "groups/" + i).asInt())
              .plusHours(Math.round(24 * set.number(at + "times/" + i)));
      String reading = read((second ? other : 100) + set.number(at + "values/" + i));
      bench.result(
          taken, Role.CONTROL, second ? "OTHER" : "QC", "RO", Optional.empty(), reading, reading);
    }
    return choice(bench, Optional.empty());
  }

  @ParameterizedTest
  @CsvSource({"0, DATA", "1, UNDECIDED", "2, UNDECIDED"})
  void chances_are_those_computed_outside(int index, FormFrom from) {
    Reference set = Reference.read("line-outlook-weighted");
    LevelChoice choice = choiceOf(set, index);
    double expected = set.number("/expected/chancesOfShare/" + index);
    assertEquals(expected, choice.chanceOfShare().orElseThrow(), 1e-5);
    assertEquals(from, choice.from());
  }

  /** Of four kinds, 25 benches each: a form that is stated is wrong in at most one of twenty. */
  @Test
  void a_form_that_the_results_state_is_the_true_one() {
    Random random = new Random(20261127);
    int wrong = 0;
    int said = 0;
    for (int i = 0; i < 100; i++) {
      boolean share = i % 2 == 0;
      boolean scatterIsShare = i % 4 < 2;
      LevelChoice choice = choice(bench(random, 3, share, scatterIsShare, 0.05), Optional.empty());
      if (choice.from() == FormFrom.DATA) {
        said++;
        boolean saidShare = choice.form().drift() == DriftForm.PROPORTIONAL;
        wrong += saidShare == share ? 0 : 1;
      }
    }
    assertTrue(said >= 50, said + " stated");
    assertTrue(wrong <= 0.05 * said, wrong + " of " + said);
  }

  @Test
  void a_scatter_that_grows_with_the_level_is_no_drift_that_does() {
    Random random = new Random(7);
    LevelChoice choice = choice(bench(random, 6, false, true, 0.05), Optional.empty());
    assertEquals(new LevelForm(DriftForm.ADDITIVE, DriftForm.PROPORTIONAL), choice.form());
    assertEquals(FormFrom.DATA, choice.from());
  }

  @Test
  void levels_that_are_nearly_alike_do_not_say() {
    LevelChoice choice = choice(bench(new Random(3), 2, true, true, 0.195), Optional.empty());
    assertEquals(FormFrom.UNDECIDED, choice.from());
    assertEquals(0.5, choice.chanceOfShare().orElseThrow(), 0.2);
  }

  @Test
  void what_a_person_set_holds_and_the_chance_is_told() {
    TestBench bench = bench(new Random(11), 4, true, true, 0.05);
    LevelChoice choice = choice(bench, Optional.of(DriftForm.ADDITIVE));
    assertEquals(DriftForm.ADDITIVE, choice.form().drift());
    assertEquals(FormFrom.SETTING, choice.from());
    assertTrue(choice.chanceOfShare().orElseThrow() > 0.9);
  }

  @Test
  void a_reference_of_zero_leaves_no_shares() {
    TestBench bench = bench(new Random(5), 2, false, false, 0);
    LevelChoice choice = choice(bench, Optional.of(DriftForm.PROPORTIONAL));
    assertEquals(FormFrom.NO_SHARES, choice.from());
    assertEquals(LevelForm.ALIKE, choice.form());
  }

  @Test
  void one_level_cannot_say() {
    TestBench bench = new TestBench().calibrated("C", TestBench.START);
    bench.control(TestBench.START.plusDays(1), "0.201");
    bench.control(TestBench.START.plusDays(8), "0.203");
    assertEquals(FormFrom.ONE_LEVEL, choice(bench, Optional.empty()).from());
    LevelChoice set = choice(bench, Optional.of(DriftForm.PROPORTIONAL));
    assertEquals(
        List.of(FormFrom.SETTING, DriftForm.PROPORTIONAL), List.of(set.from(), set.form().drift()));
  }
}
