package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.bench.Role;

class OutsideComparisonsTest {
  private final TestBench made = new TestBench();

  private static Uncertainty.Budget budget(double standard) {
    return new Uncertainty.Budget(
        "QC",
        0.2,
        OptionalDouble.empty(),
        6,
        20,
        2,
        TestBench.START,
        TestBench.START.plusDays(200),
        List.of(),
        standard,
        12,
        2.18);
  }

  /** PT-1 of the practitioner: result .231 with .010, round .214 with .004, deviation .012. */
  @Test
  void theRoundOfThePractitioner() {
    OutsideScore score = score(OptionalDouble.of(0.004), OptionalDouble.of(0.012), 0.010);
    assertEquals(1.5784, score.zeta().value().orElseThrow(), 5e-5);
    assertEquals(0.7892, score.en().value().orElseThrow(), 5e-5);
    assertEquals(1.3440, score.round().value().orElseThrow().score(), 5e-5);
    assertTrue(score.round().value().orElseThrow().primed());
    // with a small uncertainty of the assigned value, or none stated, it is the plain z
    OutsideScore sure = score(OptionalDouble.of(0.003), OptionalDouble.of(0.012), 0.010);
    assertEquals(1.4167, sure.round().value().orElseThrow().score(), 5e-5);
    OutsideScore none = score(OptionalDouble.empty(), OptionalDouble.of(0.012), 0.010);
    assertEquals(1.4167, none.round().value().orElseThrow().score(), 5e-5);
  }

  private static OutsideScore score(OptionalDouble stated, OptionalDouble round, double own) {
    OutsideDifference difference =
        new OutsideDifference(
            "B-1",
            "PM-1",
            "An invented laboratory",
            Optional.empty(),
            0.231,
            1,
            0.214,
            stated,
            round,
            "outside.csv",
            2);
    Uncertainty uncertainty = new Uncertainty("PM-1", Answer.of(budget(own)));
    return OutsideComparisons.scored(List.of(difference), List.of(uncertainty)).get(0);
  }

  @Test
  void whatIsNotStatedIsNeverMadeUp() {
    made.product(TestBench.START.plusDays(1), "B-1", "0.210", "0.214");
    made.outside("B-1", "0.204", "");
    made.outside("B-1", "0.204", "0.008");
    List<OutsideDifference> differences = OutsideComparisons.differences(made.records());
    assertEquals(0.008, differences.get(0).difference(), 1e-12);
    assertTrue(differences.get(0).stated().isEmpty());
    assertEquals(0.004, differences.get(1).stated().orElseThrow(), 1e-12);
    List<OutsideScore> scores = OutsideComparisons.scored(differences, List.of());
    assertEquals(
        Optional.of("the laboratory states no uncertainty with its factor"),
        scores.get(0).zeta().why());
    assertEquals(
        Optional.of("the bench's own uncertainty is not known"), scores.get(1).zeta().why());
    assertEquals(
        Optional.of("outside.csv gives no assessment_deviation"), scores.get(1).round().why());
    assertEquals(OptionalDouble.of(0.004), OutsideComparisons.statedUncertainty(made.records()));
  }

  @Test
  void aRoundsDeviationComesFromTheSheet() {
    made.product(TestBench.START.plusDays(1), "B-1", "0.210", "0.214");
    made.assessment = Optional.of(new BigDecimal("0.004"));
    made.outside("B-1", "0.204", "");
    List<OutsideScore> scores =
        OutsideComparisons.scored(OutsideComparisons.differences(made.records()), List.of());
    assertEquals(2, scores.get(0).round().value().orElseThrow().score(), 1e-9);
  }

  @Test
  void anotherSampleAndAControlAreNoPairs() {
    LocalDateTime day = TestBench.START.plusDays(1);
    made.result(day, Role.CONTROL, "B-1", "RO", Optional.empty(), "0.210");
    made.product(day.plusHours(1), "B-2", "0.210");
    made.outside("B-1", "0.204", "");
    assertTrue(OutsideComparisons.differences(made.records()).isEmpty());
  }
}
