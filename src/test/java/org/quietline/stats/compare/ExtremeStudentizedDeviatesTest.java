package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Reference;

class ExtremeStudentizedDeviatesTest {
  private static final Class<?> SUBJECT = ExtremeStudentizedDeviates.class;

  /** The page cuts after the third decimal: held to one unit of it. */
  @Test
  void handbookFiftyFourValues() {
    Reference nist = Reference.read("nist-1.3.5.17.3-generalized-esd");
    double[] y = nist.numbers("/data/y", 54);
    var test = ExtremeStudentizedDeviates.of(10, 0.05, y);
    for (int i = 0; i < 10; i++) {
      var step = test.steps().get(i);
      nist.check(SUBJECT, "R of step " + (i + 1), "/expected/R/" + i, step.statistic(), 0.00101);
      String what = "critical value of step " + (i + 1);
      nist.check(SUBJECT, what, "/expected/lambda/" + i, step.criticalValue(), 0.00101);
      Recalculated.check(nist, "own R " + (i + 1), "/own/R/" + i, step.statistic());
    }
    int found = test.places().size();
    nist.check(SUBJECT, "outliers among 54", "/expected/outliers", found);
    assertEquals(List.of(53, 52, 51), test.places());
  }

  @ParameterizedTest
  @CsvSource({"25, 5", "30, 5", "40, 4", "50, 5"})
  void rosnersCriticalValues(int n, int steps) {
    Reference table = Reference.read("esd-rosner-1983-lambda");
    double[] values = new double[n];
    Arrays.setAll(values, i -> i * i);
    var test = ExtremeStudentizedDeviates.of(steps, 0.05, values);
    for (int i = 0; i < steps; i++) {
      String what = "step " + (i + 1) + " of " + n;
      table.check(SUBJECT, what, "/expected/" + n + "/" + i, test.steps().get(i).criticalValue());
    }
  }

  @Test
  void oneStepIsGrubbs() {
    double[] values = {4, 5, 6, 5.5, 4.5, 12};
    var test = ExtremeStudentizedDeviates.of(1, 0.05, values);
    Grubbs grubbs = Grubbs.of(Suspect.EITHER, values);
    assertRelative(grubbs.statistic(), test.steps().get(0).statistic(), 1e-14, "R");
    double critical = Grubbs.criticalValue(Suspect.EITHER, 6, 0.05);
    assertRelative(critical, test.steps().get(0).criticalValue(), 1e-14, "critical");
    assertEquals(List.of(5), test.places());
    assertEquals(grubbs.places(), test.places());
  }

  /** The first two steps are below their critical values; the third is not, so all three count. */
  @Test
  void looksBackFromTheLastStep() {
    double[] values = {9, 1.1, 1.0, 9.1, 1.2, 1.1, 0.9, 9.2, 1.0, 1.1, 0.8, 1.2, 0.9, 1.0, 1.3};
    var test = ExtremeStudentizedDeviates.of(4, 0.05, values);
    assertTrue(test.steps().get(0).statistic() < test.steps().get(0).criticalValue());
    assertEquals(List.of(7, 3, 0), test.places());
    double[] quiet = {1, 2, 3, 4, 5, 6, 7};
    assertEquals(List.of(), ExtremeStudentizedDeviates.of(5, 0.05, quiet).places());
  }
}
