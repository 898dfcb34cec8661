package org.quietline.stats.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.Reference;
import org.quietline.stats.agreement.ComparisonScore.Kind;
import org.quietline.stats.agreement.ComparisonScore.Verdict;

class ComparisonScoreTest {
  private static final double NAN = Double.NaN;

  @Test
  void practitionersRound() {
    Reference file = Reference.read("comparison-scores");
    double x = file.number("/data/result");
    double assigned = file.number("/data/assigned");
    double sigma = file.number("/data/sigma");
    double ofAssigned = file.number("/data/assignedUncertainty");
    double u = file.number("/data/uncertainty");
    check(file, "z", ComparisonScore.z(x, assigned, sigma));
    check(file, "zPrime", ComparisonScore.zPrime(x, assigned, sigma, ofAssigned));
    check(file, "zeta", ComparisonScore.zeta(x, u, assigned, ofAssigned));
    check(file, "en", ComparisonScore.en(x, 2 * u, assigned, 2 * ofAssigned));
    List<ComparisonScore> scores =
        Arrays.stream(file.numbers("/data/scores", 4))
            .mapToObj(v -> new ComparisonScore(Kind.Z, v))
            .toList();
    check(file, "combined", ComparisonScore.combined(scores));
    assertTrue(ComparisonScore.isUncertain(ofAssigned, sigma));
    assertFalse(ComparisonScore.isUncertain(0.0036, sigma));
  }

  private static void check(Reference file, String name, ComparisonScore got) {
    file.check(ComparisonScore.class, name, "/expected/" + name, got.value());
  }

  @Test
  void verdicts() {
    assertEquals(Verdict.ACCEPTABLE, new ComparisonScore(Kind.Z, -2).verdict());
    assertEquals(Verdict.QUESTIONABLE, new ComparisonScore(Kind.Z, -2.01).verdict());
    assertEquals(Verdict.QUESTIONABLE, new ComparisonScore(Kind.ZETA, 2.99).verdict());
    assertEquals(Verdict.UNACCEPTABLE, new ComparisonScore(Kind.Z_PRIME, 3).verdict());
    assertEquals(Verdict.ACCEPTABLE, new ComparisonScore(Kind.E_N, -1).verdict());
    assertEquals(Verdict.UNACCEPTABLE, new ComparisonScore(Kind.E_N, 1.01).verdict());
  }

  @Test
  void refusals() {
    refused("score is NaN", () -> new ComparisonScore(Kind.Z, NAN));
    refused("result is NaN", () -> ComparisonScore.z(NAN, 1, 1));
    refused("assigned value is Infinity", () -> ComparisonScore.z(1, 1 / 0.0, 1));
    refused(
        "deviation for assessment must be above zero, is 0.0", () -> ComparisonScore.z(1, 1, 0));
    refused(
        "deviation for assessment must be above zero, is NaN",
        () -> ComparisonScore.zPrime(1, 1, NAN, 0));
    refused(
        "uncertainty of the assigned value must not be below zero, is -1.0",
        () -> ComparisonScore.zPrime(1, 1, 1, -1));
    refused(
        "uncertainty of the result must be above zero, is 0.0",
        () -> ComparisonScore.zeta(1, 0, 1, 1));
    refused(
        "uncertainty of the assigned value must not be below zero, is NaN",
        () -> ComparisonScore.en(1, 1, 1, NAN));
    refused(
        "uncertainty of the assigned value must not be below zero, is -1.0",
        () -> ComparisonScore.isUncertain(-1, 1));
    refused(
        "deviation for assessment must be above zero, is 0.0",
        () -> ComparisonScore.isUncertain(1, 0));
    refused("needs at least 1 score, has 0", () -> ComparisonScore.combined(List.of()));
    ComparisonScore z = new ComparisonScore(Kind.Z, 1);
    ComparisonScore en = new ComparisonScore(Kind.E_N, 1);
    refused("cannot combine E_N and E_N", () -> ComparisonScore.combined(List.of(en)));
    refused("cannot combine Z and E_N", () -> ComparisonScore.combined(List.of(z, en)));
    refused(
        "cannot combine Z and ZETA",
        () -> ComparisonScore.combined(List.of(z, new ComparisonScore(Kind.ZETA, 1))));
  }

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }
}
