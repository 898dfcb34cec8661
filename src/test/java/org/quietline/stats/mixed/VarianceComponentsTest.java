package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.ChiSquare;

class VarianceComponentsTest {
  private static final Class<VarianceComponents> SUBJECT = VarianceComponents.class;

  private final Reference runs = Reference.read("reml-nested-unbalanced");
  private final double[] runValues = Cases.numbers(runs, "/data/values");
  private final NestedGroups runGroups =
      NestedGroups.of(Cases.labels(runs, "/data/outer"), Cases.labels(runs, "/data/inner"));
  private final VarianceComponents fromRuns = VarianceComponents.fit(runValues, runGroups);

  @Test
  void unbalancedRuns() {
    Cases.check(runs, SUBJECT, "component", "/expected/components", fromRuns.components());
    runs.check(
        SUBJECT, "restricted log likelihood", "/expected/logLikelihood", fromRuns.logLikelihood());
    Cases.check(runs, SUBJECT, "mean", "/expected/mean", fromRuns.coefficient(0));
    runs.check(VarianceEstimate.class, "sum", "/expected/total", fromRuns.total().variance());
    runs.check(
        VarianceEstimate.class,
        "degrees of freedom of the sum",
        "/expected/totalDegreesOfFreedom",
        fromRuns.total().degreesOfFreedom());
    assertRelative(
        Math.sqrt(runs.number("/expected/total")), fromRuns.total().deviation(), 1e-7, "root");
    Cases.check(runs, SUBJECT, "effect", "/expected/effects", fromRuns.effects(0));
  }

  @Test
  void covarianceOfTheComponents() {
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        String place = "/" + i + "/" + j;
        runs.check(
            SUBJECT,
            "covariance of components " + place,
            "/expected/covarianceOfComponents" + place,
            fromRuns.covariance()[i][j]);
      }
    }
  }

  @Test
  void testsOfComponents() {
    BoundaryTest outer = fromRuns.testOf(0);
    BoundaryTest inner = fromRuns.testOf(1);
    runs.check(BoundaryTest.class, "ratio, outer", "/expected/ratioOuter", outer.statistic());
    runs.check(BoundaryTest.class, "ratio, inner", "/expected/ratioInner", inner.statistic());
    // a difference of log likelihoods, of which the chance keeps the relative error times the ratio
    double chance = runs.number("/expected/chanceOuter");
    runs.check(
        BoundaryTest.class,
        "chance, outer",
        "/expected/chanceOuter",
        outer.chance(),
        1e-6 * chance);
    runs.check(BoundaryTest.class, "chance, inner", "/expected/chanceInner", inner.chance());
  }

  @Test
  void fullLikelihoodOfRuns() {
    FullLikelihood full = fromRuns.fullLikelihood();
    Class<?> subject = FullLikelihood.class;
    Cases.check(runs, subject, "component", "/expected/fullComponents", full.components());
    runs.check(subject, "log likelihood", "/expected/fullLogLikelihood", full.logLikelihood());
    assertEquals(4, full.parameters());
    assertEquals(26, full.n());
    // -2 l + 2 k n / (n - k - 1)
    double akaike = -2 * full.logLikelihood() + 2 * 4 * 26 / 21.0;
    Evidence.own(
        subject, "corrected criterion", "its other form", akaike, full.correctedAkaike(), 1e-14);
  }

  /** Errors of predictions were differentiated numerically, which leaves about seven digits. */
  @Test
  void predictions() {
    StudentEstimate next = fromRuns.newValue();
    runs.check(StudentEstimate.class, "a new value", "/expected/newValue/0", next.value());
    runs.check(
        StudentEstimate.class, "its error", "/expected/newValue/1", next.standardError(), 1e-8);
    runs.check(
        StudentEstimate.class,
        "its degrees of freedom",
        "/expected/newValue/2",
        next.degreesOfFreedom(),
        1e-5);
    StudentEstimate third = fromRuns.groupMean(1, 2);
    assertEquals(List.of(1, 3), runGroups.paths(1).get(2));
    runs.check(NestedGroups.class, "third run", "/expected/thirdRun/0", third.value());
    runs.check(
        NestedGroups.class, "its error", "/expected/thirdRun/1", third.standardError(), 1e-8);
    runs.check(
        NestedGroups.class,
        "its degrees of freedom",
        "/expected/thirdRun/2",
        third.degreesOfFreedom(),
        1e-4);
    double sum = fromRuns.coefficient(0).value() + fromRuns.effects(0).get(0);
    assertRelative(sum, fromRuns.groupMean(0, 0).value(), 1e-14, "outer group");
    assertRelative(sum + fromRuns.effects(1).get(2), third.value(), 1e-14, "both effects of a run");
  }

  /** Both sides draw at random; 20 000 draws there and 1000 here are good to some three percent. */
  @Test
  void intervalsFromPivots() {
    PivotalComponents pivotal = fromRuns.pivotal();
    double[][] weights = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1, 1, 1}, {1, 1, 0.5}};
    for (int w = 0; w < weights.length; w++) {
      var interval = pivotal.interval(0.95, weights[w]);
      String place = "/expected/intervals/" + w;
      double upper = runs.number(place + "/1");
      Class<?> subject = PivotalComponents.class;
      runs.check(subject, "upper end " + w, place + "/1", interval.upper(), 0.05 * upper);
      double lower = runs.number(place + "/0");
      runs.check(subject, "lower end " + w, place + "/0", interval.lower(), 0.03 * lower);
    }
  }

  @Test
  void theResidualsIntervalIsExact() {
    double squares = 0;
    for (List<int[]> cells : runGroups.cells(0)) {
      for (int[] rows : cells) {
        double mean = 0;
        for (int row : rows) {
          mean += runValues[row] / rows.length;
        }
        for (int row : rows) {
          squares += (runValues[row] - mean) * (runValues[row] - mean);
        }
      }
    }
    var interval = fromRuns.pivotal().interval(0.9, 0, 0, 1);
    assertRelative(squares / ChiSquare.quantile(0.95, 12), interval.lower(), 1e-4, "lower");
    assertRelative(squares / ChiSquare.quantile(0.05, 12), interval.upper(), 1e-4, "upper");
  }

  @Test
  void dyestuffAndTheSetWithoutBatchEffect() {
    Reference dyestuff = Reference.read("reml-dyestuff");
    NestedGroups batches = NestedGroups.of(Cases.labels(dyestuff, "/data/groups"));
    for (String name : List.of("dyestuff", "second")) {
      VarianceComponents found =
          VarianceComponents.fit(Cases.numbers(dyestuff, "/data/" + name), batches);
      String at = "/expected/" + name;
      Cases.check(dyestuff, SUBJECT, name + ", component", at + "/components", found.components());
      dyestuff.check(
          SUBJECT, name + ", log likelihood", at + "/logLikelihood", found.logLikelihood());
      Cases.check(dyestuff, SUBJECT, name + ", mean", at + "/mean", found.coefficient(0));
      Cases.check(dyestuff, SUBJECT, name + ", effect", at + "/effects", found.effects(0));
      FullLikelihood full = found.fullLikelihood();
      Cases.check(
          dyestuff,
          FullLikelihood.class,
          name + ", component",
          at + "/fullComponents",
          full.components());
      dyestuff.check(
          FullLikelihood.class,
          name + ", log likelihood",
          at + "/fullLogLikelihood",
          full.logLikelihood());
      dyestuff.check(
          SUBJECT,
          name + ", variance of the component",
          at + "/covarianceOfComponents/0/0",
          found.covariance()[0][0]);
      // a difference of two log likelihoods of about 160
      dyestuff.check(
          BoundaryTest.class, name + ", ratio", at + "/ratio", found.testOf(0).statistic(), 1e-10);
    }
  }

  @Test
  void balancedNestedSets() {
    for (String id : List.of("reml-pastes", "reml-oxide")) {
      Reference set = Reference.read(id);
      VarianceComponents found = fit(set);
      Cases.check(set, SUBJECT, "component", "/expected/components", found.components());
      set.check(SUBJECT, "log likelihood", "/expected/logLikelihood", found.logLikelihood());
      Cases.check(set, SUBJECT, "mean", "/expected/mean", found.coefficient(0));
    }
    Reference pastes = Reference.read("reml-pastes");
    VarianceComponents found = fit(pastes);
    FullLikelihood full = found.fullLikelihood();
    Class<?> subject = FullLikelihood.class;
    Cases.check(pastes, subject, "component", "/expected/fullComponents", full.components());
    pastes.check(subject, "log likelihood", "/expected/fullLogLikelihood", full.logLikelihood());
    double ratio = pastes.number("/expected/ratioOuter");
    pastes.check(
        BoundaryTest.class,
        "ratio, outer",
        "/expected/ratioOuter",
        found.testOf(0).statistic(),
        1e-6 * ratio);
  }

  private static VarianceComponents fit(Reference set) {
    return VarianceComponents.fit(
        Cases.numbers(set, "/data/values"),
        NestedGroups.of(Cases.labels(set, "/data/outer"), Cases.labels(set, "/data/inner")));
  }

  @Test
  void threeLevelsWithARegressor() {
    Reference three = Reference.read("reml-three-levels");
    NestedGroups groups =
        NestedGroups.of(
            Cases.labels(three, "/data/levels/0"),
            Cases.labels(three, "/data/levels/1"),
            Cases.labels(three, "/data/levels/2"));
    VarianceComponents found =
        VarianceComponents.fit(
            Cases.numbers(three, "/data/values"), groups, Cases.numbers(three, "/data/regressor"));
    Cases.check(three, NestedGroups.class, "component", "/expected/components", found.components());
    three.check(SUBJECT, "log likelihood", "/expected/logLikelihood", found.logLikelihood());
    Cases.check(three, SUBJECT, "constant", "/expected/coefficients/0", found.coefficient(0));
    Cases.check(three, SUBJECT, "regressor", "/expected/coefficients/1", found.coefficient(1));
    for (int i = 0; i < 4; i++) {
      three.check(
          SUBJECT,
          "variance of component " + i,
          "/expected/covarianceOfComponents/" + i + "/" + i,
          found.covariance()[i][i]);
    }
    StudentEstimate next = found.newValue(5);
    three.check(SUBJECT, "new value", "/expected/newValueAt5/0", next.value());
    three.check(SUBJECT, "its error", "/expected/newValueAt5/1", next.standardError(), 1e-5);
    FullLikelihood full = found.fullLikelihood();
    Cases.check(
        three, FullLikelihood.class, "component", "/expected/fullComponents", full.components());
    assertEquals(6, full.parameters());
    assertEquals(4, found.components().size());
  }

  @Test
  void printedResults() {
    Reference printed = Reference.read("reml-published");
    VarianceComponents rail =
        VarianceComponents.fit(
            Cases.numbers(printed, "/data/rail"),
            NestedGroups.of(Cases.labels(printed, "/data/railGroups")));
    check(printed, "rail", "outer", Math.sqrt(rail.components().get(0)));
    check(printed, "rail", "residual", Math.sqrt(rail.components().get(1)));
    check(printed, "rail", "logLikelihood", rail.logLikelihood());
    check(printed, "rail", "mean", rail.coefficient(0).value());
    check(printed, "rail", "error", rail.coefficient(0).standardError());
    VarianceComponents oxide = fit(Reference.read("reml-oxide"));
    check(printed, "oxide", "outer", Math.sqrt(oxide.components().get(0)));
    check(printed, "oxide", "inner", Math.sqrt(oxide.components().get(1)));
    check(printed, "oxide", "residual", Math.sqrt(oxide.components().get(2)));
    check(printed, "oxide", "logLikelihood", oxide.logLikelihood());
    VarianceComponents pastes = fit(Reference.read("reml-pastes"));
    check(printed, "pastes", "outer", Math.sqrt(pastes.components().get(0)));
    check(printed, "pastes", "inner", Math.sqrt(pastes.components().get(1)));
    check(printed, "pastes", "residual", Math.sqrt(pastes.components().get(2)));
    check(printed, "pastes", "criterion", -2 * pastes.logLikelihood());
    check(printed, "pastes", "mean", pastes.coefficient(0).value());
    check(printed, "pastes", "error", pastes.coefficient(0).standardError());
    Reference dyestuff = Reference.read("reml-dyestuff");
    NestedGroups batches = NestedGroups.of(Cases.labels(dyestuff, "/data/groups"));
    for (String name : List.of("dyestuff", "second")) {
      VarianceComponents found =
          VarianceComponents.fit(Cases.numbers(dyestuff, "/data/" + name), batches);
      check(printed, name, "outer", Math.sqrt(found.components().get(0)));
      check(printed, name, "residual", Math.sqrt(found.components().get(1)));
      check(printed, name, "criterion", -2 * found.logLikelihood());
      check(printed, name, "mean", found.coefficient(0).value());
      check(printed, name, "error", found.coefficient(0).standardError());
      if (name.equals("dyestuff")) {
        double outer = found.fullLikelihood().components().get(0);
        check(printed, name, "outerFull", Math.sqrt(outer));
      }
    }
  }

  private static void check(Reference printed, String set, String what, double got) {
    printed.check(SUBJECT, set + ", " + what, "/expected/" + set + "/" + what, got);
  }

  @Test
  void balancedDataGiveTheAnalysisOfVariance() {
    SplittableRandom random = new SplittableRandom(5);
    int compared = 0;
    for (int trial = 0; trial < 20; trial++) {
      int a = 4;
      int b = 3;
      int n = 2;
      double[] y = nested(random, a, b, n, 2, 1.5);
      double[] squares = squares(y, a, b, n);
      double inner = (squares[1] - squares[2]) / n;
      double outer = (squares[0] - squares[1]) / (n * b);
      VarianceComponents found = VarianceComponents.fit(y, balanced(a, b, n));
      if (inner > 0 && outer > 0) {
        compared++;
        String how = "analysis of variance, balanced";
        Evidence.own(SUBJECT, "outer", how, outer, found.components().get(0), 1e-8);
        Evidence.own(SUBJECT, "inner", how, inner, found.components().get(1), 1e-8);
        Evidence.own(SUBJECT, "residual", how, squares[2], found.components().get(2), 1e-10);
        double error = Math.sqrt(squares[0] / (a * b * n));
        assertRelative(error, found.coefficient(0).standardError(), 1e-8, "error of the mean");
        assertRelative(a - 1.0, found.coefficient(0).degreesOfFreedom(), 1e-7, "df of the mean");
      }
    }
    assertTrue(compared >= 8, "compared " + compared);
  }

  private static double[] nested(
      SplittableRandom random, int a, int b, int n, double outer, double inner) {
    double[] y = new double[a * b * n];
    double ea = 0;
    double eb = 0;
    for (int i = 0; i < y.length; i++) {
      ea = i % (b * n) == 0 ? outer * Simulation.normal(random) : ea;
      eb = i % n == 0 ? inner * Simulation.normal(random) : eb;
      y[i] = ea + eb + Simulation.normal(random);
    }
    return y;
  }

  private static NestedGroups balanced(int a, int b, int n) {
    int[] outer = new int[a * b * n];
    int[] inner = new int[a * b * n];
    for (int i = 0; i < outer.length; i++) {
      outer[i] = i / (b * n);
      inner[i] = i / n % b;
    }
    return NestedGroups.of(outer, inner);
  }

  private static double[] squares(double[] y, int a, int b, int n) {
    double grand = mean(y, 0, y.length);
    double[] sums = new double[3];
    for (int i = 0; i < a; i++) {
      double group = mean(y, i * b * n, b * n);
      sums[0] += b * n * (group - grand) * (group - grand) / (a - 1);
      for (int j = 0; j < b; j++) {
        double cell = mean(y, (i * b + j) * n, n);
        sums[1] += n * (cell - group) * (cell - group) / (a * (b - 1));
        for (int k = 0; k < n; k++) {
          double e = y[(i * b + j) * n + k] - cell;
          sums[2] += e * e / (a * b * (n - 1));
        }
      }
    }
    return sums;
  }

  private static double mean(double[] y, int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += y[i];
    }
    return sum / count;
  }

  /**
   * Random unbalanced data: no point of a wide grid is above, and the conditions of an optimum
   * hold.
   */
  @Test
  void noOtherComponentsAreMoreLikely() {
    Random random = new Random(77);
    int atBoundary = 0;
    for (int trial = 0; trial < 30; trial++) {
      int[] outer = new int[18];
      int[] inner = new int[18];
      double[] y = new double[18];
      double[][] effect = new double[5][4];
      double spread = trial % 3;
      for (double[] row : effect) {
        row[0] = spread * random.nextGaussian();
        for (int j = 1; j < 4; j++) {
          row[j] = (trial % 2) * random.nextGaussian();
        }
      }
      for (int i = 0; i < 18; i++) {
        outer[i] = i < 10 ? i / 2 : random.nextInt(5);
        inner[i] = i < 10 ? 1 : 1 + random.nextInt(3);
        y[i] = effect[outer[i]][0] + effect[outer[i]][inner[i]] + random.nextGaussian();
      }
      VarianceComponents found = VarianceComponents.fit(y, NestedGroups.of(outer, inner));
      DenseModel dense =
          DenseModel.of(
              y, DenseModel.constant(18), DenseModel.same(outer), DenseModel.same(outer, inner));
      double[] best = found.components().stream().mapToDouble(c -> c).toArray();
      assertRelative(dense.logLikelihood(best), found.logLikelihood(), 1e-11, "log likelihood");
      double[] score = dense.score(best);
      for (int k = 0; k < 3; k++) {
        if (best[k] == 0) {
          atBoundary++;
          assertTrue(score[k] <= 1e-9, "score at the boundary " + score[k]);
        } else {
          assertEquals(0, score[k] * best[k], 1e-7, "score of component " + k);
        }
      }
      for (double a = 0.01; a < 200; a *= 5) {
        for (double b = 0.01; b < 200; b *= 5) {
          for (double s = 0.5; s < 3; s *= 2) {
            double[] other = {(a - 0.01) * best[2], (b - 0.01) * best[2], s * best[2]};
            assertTrue(dense.logLikelihood(other) <= found.logLikelihood() + 1e-9);
          }
        }
      }
    }
    assertTrue(atBoundary >= 10, "at the boundary " + atBoundary);
  }

  @Test
  void offsetScaleAndOrderChangeNothingElse() {
    List<Double> components = fromRuns.components();
    double[] moved = new double[26];
    for (int i = 0; i < 26; i++) {
      moved[i] = 1e4 + 1000 * runValues[i];
    }
    VarianceComponents other = VarianceComponents.fit(moved, runGroups);
    for (int k = 0; k < 3; k++) {
      assertRelative(1e6 * components.get(k), other.components().get(k), 1e-7, "component " + k);
    }
    assertRelative(
        1e4 + 1000 * fromRuns.coefficient(0).value(), other.coefficient(0).value(), 1e-12, "mean");
    assertRelative(
        fromRuns.coefficient(0).degreesOfFreedom(),
        other.coefficient(0).degreesOfFreedom(),
        1e-6,
        "degrees of freedom");
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < 26; i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(3));
    double[] shuffled = order.stream().mapToDouble(i -> runValues[i]).toArray();
    int[] outer = Cases.labels(runs, "/data/outer");
    int[] inner = Cases.labels(runs, "/data/inner");
    NestedGroups groups =
        NestedGroups.of(
            order.stream().mapToInt(i -> -outer[i]).toArray(),
            order.stream().mapToInt(i -> inner[i] % 3).toArray());
    VarianceComponents again = VarianceComponents.fit(shuffled, groups);
    for (int k = 0; k < 3; k++) {
      assertRelative(components.get(k), again.components().get(k), 1e-8, "component " + k);
    }
    assertRelative(fromRuns.logLikelihood(), again.logLikelihood(), 1e-12, "log likelihood");
  }

  @Test
  void anEffectOfNoSizeIsZeroExactly() {
    double[] y = {1, 2, 3, 1, 2, 3, 1, 2, 3};
    NestedGroups three = NestedGroups.of(new int[] {1, 1, 1, 2, 2, 2, 3, 3, 3});
    VarianceComponents found = VarianceComponents.fit(y, three);
    assertEquals(0, found.components().get(0));
    assertEquals(0.75, found.components().get(1), 1e-14);
    assertEquals(List.of(0.0, 0.0, 0.0), found.effects(0));
    assertEquals(new BoundaryTest(0, 1), found.testOf(0));
    assertEquals(new VarianceEstimate(0, 0), found.sum(1, 0));
    assertEquals(0, found.pivotal().interval(0.95, 1, 0).upper(), 1e-12);
    // an absent effect is not known to be absent: two degrees of freedom, not eight
    assertEquals(2, found.coefficient(0).degreesOfFreedom(), 1e-9);
  }

  @Test
  void aSumIsWhatItsWeightsSay() {
    VarianceEstimate mean = fromRuns.sum(1, 1, 0.5);
    List<Double> c = fromRuns.components();
    assertRelative(c.get(0) + c.get(1) + 0.5 * c.get(2), mean.variance(), 1e-14, "variance");
    double[][] w = fromRuns.covariance();
    double[] weights = {1, 1, 0.5};
    double spread = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        spread += weights[i] * weights[j] * w[i][j];
      }
    }
    assertRelative(
        2 * mean.variance() * mean.variance() / spread, mean.degreesOfFreedom(), 1e-13, "df");
    assertArrayEquals(w[0], fromRuns.covariance()[0]);
  }

  /** A change of the unit changes no degrees of freedom. */
  @Test
  void theUnitDoesNotMatter() {
    double[] values = {0.198, 0.201, 0.205, 0.203, 0.209, 0.212, 0.207, 0.211, 0.188, 0.192};
    NestedGroups pairs = NestedGroups.of(new int[] {1, 1, 2, 2, 3, 3, 4, 4, 5, 5});
    VarianceEstimate plain = VarianceComponents.fit(values, pairs).total();
    for (int power : new int[] {-300, 300}) {
      double[] scaled = Arrays.stream(values).map(v -> Math.scalb(v, power)).toArray();
      VarianceEstimate found = VarianceComponents.fit(scaled, pairs).total();
      assertRelative(plain.degreesOfFreedom(), found.degreesOfFreedom(), 1e-9, "df");
      assertRelative(Math.scalb(plain.variance(), 2 * power), found.variance(), 1e-9, "variance");
    }
  }
}
