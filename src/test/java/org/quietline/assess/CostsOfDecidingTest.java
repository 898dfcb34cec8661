package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.quietline.assess.CostAdvice.Kind;
import org.quietline.assess.CostAdvice.Option;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReleaseSettings.Costs;
import org.quietline.stats.capability.Conformance;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.capability.GuardCost;
import org.quietline.stats.capability.StudentConformance;

/** An invented bench of ten calibrations and thirty batches, with costs set. */
class CostsOfDecidingTest {
  private static final BigDecimal BAD = new BigDecimal("4000");
  private static final BigDecimal REWORK = new BigDecimal("250");
  private final TestBench made = new TestBench();
  private final Random random = new Random(11);

  private void costs() {
    made.release = new ReleaseSettings(0.95, Optional.of(new Costs(BAD, REWORK)));
    made.limits =
        Optional.of(
            new ProductLimits(
                Optional.empty(), Optional.of(new BigDecimal("0.240")), Optional.empty()));
    made.assigned = Optional.of(new BigDecimal("0.200"));
    made.uncertainty = Optional.of(new BigDecimal("0.001"));
  }

  private void calibrations(int many) {
    for (int c = 0; c < many; c++) {
      LocalDateTime at = TestBench.START.plusDays(20L * c);
      made.calibrated("C" + c, at);
      for (int i = 1; i <= 3; i++) {
        made.control(at.plusDays(i), read(0.200, 0.003), read(0.200, 0.003));
      }
    }
  }

  private void batches(int many, double deviation) {
    for (int i = 0; i < many; i++) {
      String value = read(0.195, deviation);
      made.product(TestBench.START.plusDays(5 + i).plusHours(3), "B-" + i, value, value);
    }
  }

  private String read(double mean, double deviation) {
    return String.format(Locale.ROOT, "%.4f", mean + deviation * random.nextGaussian());
  }

  private List<Answer<CostAdvice>> ask() {
    Records records = made.records();
    Budgets budgets = new Budgets(records, List.of());
    Precision precision = MethodPrecision.ask(records, List.of(), budgets);
    return CostsOfDeciding.ask(
        records.bench().settings().release(), ProcessCapability.ask(records, precision), budgets);
  }

  @Test
  void withoutCostsNothingIsSaid() {
    calibrations(10);
    batches(30, 0.02);
    assertTrue(ask().isEmpty());
  }

  @Test
  void theProcessIsWhatBatchesShowLessWhatMeasurementAdds() {
    costs();
    calibrations(10);
    batches(30, 0.02);
    CostAdvice advice = ask().get(0).value().orElseThrow();
    Records records = made.records();
    Budgets budgets = new Budgets(records, List.of());
    Uncertainty.Budget budget = budgets.statements().get(0).budget().value().orElseThrow();
    Capability process =
        ProcessCapability.ask(records, MethodPrecision.ask(records, List.of(), budgets))
            .value()
            .orElseThrow();
    double scatter = budgets.of("PM-1").value().orElseThrow().split().reported().deviation();
    double own = Math.sqrt(process.deviation() * process.deviation() - scatter * scatter);
    assertEquals(own, advice.deviation(), 1e-12);
    assertEquals(process.mean(), advice.mean(), 1e-12);
    assertEquals(30, advice.batches());
    GuardCost cost =
        new GuardCost(
            Conformance.atMost(0.240, budget.standard()),
            new Population(process.mean(), own),
            4000,
            250);
    Option rule = advice.option(Kind.RULE).orElseThrow();
    assertEquals(
        new StudentConformance(
                OptionalDouble.empty(),
                OptionalDouble.of(0.240),
                budget.standard(),
                budget.degreesOfFreedom())
            .guardBand(0.95),
        rule.distance(),
        1e-12);
    assertEquals(cost.cost(rule.distance()), rule.cost(), 1e-12);
    assertEquals(4000 * rule.badReleased() + 250 * rule.goodHeld(), rule.cost(), 1e-9);
    Option cheapest = advice.option(Kind.CHEAPEST).orElseThrow();
    assertTrue(advice.curve().stream().allMatch(p -> p.cost() >= cheapest.cost() - 1e-9));
    assertEquals(0, advice.option(Kind.LIMIT).orElseThrow().distance());
  }

  @Test
  void tooFewBatchesGiveAReason() {
    costs();
    calibrations(10);
    batches(9, 0.02);
    assertEquals(Optional.of("needs 10 product results, has 9"), ask().get(0).why());
  }

  @Test
  void batchesThatScatterLikeControlsGiveAReason() {
    costs();
    calibrations(10);
    batches(30, 0.0005);
    assertEquals(
        Optional.of("control results scatter as much as the product results do"),
        ask().get(0).why());
  }

  @Test
  void withThreeCalibrationsTheUncertaintyIsNotKnown() {
    costs();
    calibrations(3);
    batches(30, 0.02);
    assertEquals(Optional.of("the uncertainty on PM-1 is not known"), ask().get(0).why());
  }
}
