package org.quietline.stats.capability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Reference;
import org.quietline.stats.capability.Conformance.Verdict;

class StudentConformanceTest {
  private static final Class<?> SUBJECT = StudentConformance.class;
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private final Reference file = Reference.read("conformance-student");

  private OptionalDouble limit(String pointer) {
    return file.at(pointer).isNull()
        ? OptionalDouble.empty()
        : OptionalDouble.of(file.number(pointer));
  }

  private static StudentConformance atMost(double limit, double u, double df) {
    return new StudentConformance(NONE, OptionalDouble.of(limit), u, df);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8})
  void chancesAndGuardBands(int row) {
    String in = "/data/rows/" + row + "/";
    String out = "/expected/rows/" + row + "/";
    StudentConformance question =
        new StudentConformance(
            limit(in + 0), limit(in + 1), file.number(in + 2), file.number(in + 3));
    double beyond = question.chanceBeyond(file.number(in + 4));
    file.check(SUBJECT, "chance beyond " + row, out + 0, beyond);
    assertEquals(1 - beyond, question.chance(file.number(in + 4)), 1e-15);
    file.check(SUBJECT, "guard band 95 % " + row, out + 1, question.guardBand(0.95));
    file.check(SUBJECT, "guard band 80 % " + row, out + 2, question.guardBand(0.8));
  }

  /** The practitioner's decision, DEC-1: 0.93319 and an acceptance limit of 0.22355. */
  @Test
  void withInfiniteDegreesOfFreedomItIsTheNormalAnswer() {
    StudentConformance known = atMost(0.240, 0.010, Double.POSITIVE_INFINITY);
    assertEquals(0.93319, known.chance(0.225), 5e-6);
    assertEquals(0.22355, 0.240 - known.guardBand(0.95), 5e-6);
    assertEquals(Conformance.atMost(0.240, 0.010).chance(0.225), known.chance(0.225), 1e-15);
  }

  /** A result on the edge of acceptance conforms with the confidence, whatever the freedom. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 2.5, 7, 100, Double.POSITIVE_INFINITY})
  void theEdgeOfAcceptanceConformsWithTheConfidence(double df) {
    StudentConformance question = atMost(0.240, 0.010, df);
    double edge = 0.240 - question.guardBand(0.95);
    assertEquals(0.95, question.chance(edge), 1e-12);
    assertEquals(Verdict.ACCEPT, question.verdict(edge - 1e-9, 0.95));
    assertEquals(Verdict.UNDECIDED, question.verdict(edge + 1e-9, 0.95));
    assertEquals(Verdict.UNDECIDED, question.verdict(0.240 + (0.240 - edge) - 1e-9, 0.95));
    assertEquals(Verdict.REJECT, question.verdict(0.240 + (0.240 - edge) + 1e-9, 0.95));
  }

  @Test
  void fewerDegreesOfFreedomWidenTheGuardBand() {
    assertEquals(6.313752 * 0.010, atMost(0.240, 0.010, 1).guardBand(0.95), 1e-8);
    assertEquals(2.131847 * 0.010, atMost(0.240, 0.010, 4).guardBand(0.95), 1e-8);
  }

  @Test
  void wrongWordsOfACallerAreNamed() {
    assertThrows(IllegalArgumentException.class, () -> atMost(0.24, 0, 5));
    assertThrows(IllegalArgumentException.class, () -> atMost(0.24, 0.01, 0));
    assertThrows(IllegalArgumentException.class, () -> atMost(0.24, 0.01, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new StudentConformance(NONE, NONE, 0.01, 5));
    assertThrows(IllegalArgumentException.class, () -> atMost(0.24, 0.01, 5).chance(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> atMost(0.24, 0.01, 5).guardBand(1));
  }
}
