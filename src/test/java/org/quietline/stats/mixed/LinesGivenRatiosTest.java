package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertRelative;

import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class LinesGivenRatiosTest {
  private static final Class<LinesGivenRatios> SUBJECT = LinesGivenRatios.class;

  private final Reference windows = Reference.read("reml-drift-windows");
  private final GroupedPoints points =
      GroupedPoints.of(
          windows.numbers("/data/times", 30),
          windows.numbers("/data/values", 30),
          Cases.labels(windows, "/data/groups"));

  @Test
  void everythingInClosedForm() {
    for (int i = 0; i < 4; i++) {
      String at = "/expected/given/" + i;
      double[] r = windows.numbers(at + "/ratios", 3);
      LinesGivenRatios lines = LinesGivenRatios.of(points, r[0], r[1], r[2]);
      check("quadratic form " + i, at + "/quadraticForm", lines.quadraticForm());
      check("log determinant " + i, at + "/logDeterminant", lines.logDeterminant());
      check(
          "log determinant of the information " + i,
          at + "/logDeterminantOfInformation",
          lines.logDeterminantOfInformation());
      check("log likelihood " + i, at + "/logLikelihood", lines.logLikelihood());
      check("slope " + i, at + "/slope", lines.coefficient(1));
      check("average " + i, at + "/average", lines.averageAt(30));
      check("group's line " + i, at + "/groupLine", lines.groupLineAt(2, 30));
      check("group's slope " + i, at + "/groupSlope", lines.groupSlope(2));
      check("new line " + i, at + "/newLine", lines.newLineAt(30));
      assertEquals(28, lines.degreesOfFreedom());
      assertRelative(lines.quadraticForm() / 28, lines.residualVariance(), 1e-14, "variance");
    }
  }

  private void check(String what, String pointer, LinesGivenRatios.Height got) {
    check(what, pointer + "/0", got.value());
    check(what + ": variance", pointer + "/1", got.unscaledVariance());
  }

  /** Zero determinants are zero but for rounding. */
  private void check(String what, String pointer, double got) {
    double expected = windows.number(pointer);
    windows.check(SUBJECT, what, pointer, got, 1e-9 * Math.abs(expected) + 1e-12);
  }

  @Test
  void theMarginalIsLargestWhereTheFitIs() {
    GroupedLines fit = GroupedLines.fit(points, LineSpread.PARALLEL);
    double ratio = fit.interceptVariance() / fit.residualVariance();
    double best = LinesGivenRatios.of(points, ratio, 0, 0).logMarginal();
    double height = LinesGivenRatios.of(points, ratio, 0, 0).logLikelihood();
    assertRelative(fit.logLikelihood(), height, 1e-12, "log likelihood");
    for (double factor : new double[] {0.2, 0.9, 1.1, 5}) {
      LinesGivenRatios other = LinesGivenRatios.of(points, factor * ratio, 0, 0);
      assertEquals(true, other.logMarginal() < best);
      // both have the same shape: they differ by a constant
      assertEquals(height - best, other.logLikelihood() - other.logMarginal(), 1e-10);
    }
  }

  @Test
  void agreesWithTheFitAtItsRatios() {
    GroupedLines fit = GroupedLines.fit(points, LineSpread.PARALLEL);
    double s2 = fit.residualVariance();
    LinesGivenRatios given = LinesGivenRatios.of(points, fit.interceptVariance() / s2, 0, 0);
    assertRelative(s2, given.residualVariance(), 1e-12, "residual");
    assertRelative(fit.groupLineAt(3, 22).value(), given.groupLineAt(3, 22).value(), 1e-12, "line");
    assertRelative(fit.slope().value(), given.groupSlope(3).value(), 1e-12, "common slope");
    double error = Math.sqrt(s2 * given.coefficient(1).unscaledVariance());
    assertRelative(fit.slope().standardError(), error, 1e-12, "error of the slope");
    assertRelative(fit.coefficient(0).value(), given.coefficient(0).value(), 1e-9, "intercept");
  }
}
