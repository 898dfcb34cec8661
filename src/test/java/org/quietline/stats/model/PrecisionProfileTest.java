package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertAgree;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.model.PrecisionProfile.Form;
import org.quietline.stats.sample.DuplicateDeviation;

class PrecisionProfileTest {
  private final Reference reference = Reference.read("precision-profiles");

  private double[] column(int set, String name) {
    String place = "/data/cases/" + set + "/" + name;
    return reference.numbers(place, reference.at(place).size());
  }

  private PrecisionProfile fit(int set, Form form) {
    return PrecisionProfile.fit(form, column(set, "levels"), column(set, "differences"));
  }

  private void check(Class<?> subject, int set, String what, String place, double got) {
    reference.check(subject, "set " + set + ": " + what, "/data/cases/" + set + "/" + place, got);
  }

  private void check(int set, String what, String place, double got) {
    check(PrecisionProfile.class, set, what, place, got);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4})
  void formsAgreeWithAGeneralMinimiser(int set) {
    check(set, "constant form", "constant", fit(set, Form.CONSTANT).deviationAt(7));
    check(set, "proportional form", "proportional", fit(set, Form.PROPORTIONAL).proportionalPart());
    PrecisionProfile both = fit(set, Form.QUADRATURE);
    check(set, "constant part", "s0", both.constantPart());
    check(set, "proportional part", "theta", both.proportionalPart());
    for (Form form : Form.values()) {
      PrecisionProfile profile = fit(set, form);
      assertEquals(form, profile.form());
      check(set, "misfit, " + form, "misfits/" + form, profile.misfit());
      check(
          PrecisionChoice.class,
          set,
          "criterion, " + form,
          "criteria/" + form,
          profile.criterion());
    }
    for (int i = 0; i < 3; i++) {
      double level = reference.number("/data/cases/" + set + "/rows/" + i + "/0");
      Interval interval = both.deviationInterval(level, 0.95);
      String row = "rows/" + i + "/";
      check(set, "deviation at " + level, row + 1, both.deviationAt(level));
      check(set, "lower 95 at " + level, row + 2, interval.lower());
      check(set, "upper 95 at " + level, row + 3, interval.upper());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4})
  void choosesTheFormOfTheLeastCriterion(int set) {
    PrecisionChoice.Chosen chosen =
        assertInstanceOf(
            PrecisionChoice.Chosen.class,
            PrecisionChoice.of(column(set, "levels"), column(set, "differences")));
    String expected = reference.at("/data/cases/" + set + "/chosen").asText();
    assertEquals(expected, chosen.profile().form().name());
    assertEquals(3, chosen.all().size());
    assertEquals(chosen.profile(), chosen.all().get(0));
    assertTrue(chosen.all().get(1).criterion() <= chosen.all().get(2).criterion());
    assertEquals(column(set, "levels").length, chosen.profile().pairs());
  }

  /**
   * All pairs of parts on a grid: none fits better, and the grid's ends lie within the interval.
   */
  @Test
  void agreesWithAGridOfBothParts() {
    for (int set : new int[] {0, 3}) {
      double[] levels = column(set, "levels");
      double[] differences = column(set, "differences");
      PrecisionProfile both = fit(set, Form.QUADRATURE);
      double level = levels[3];
      double most = both.misfit() + 3.841458820694124 / 2;
      double low = Double.POSITIVE_INFINITY;
      double high = 0;
      for (int i = 0; i <= 160; i++) {
        for (int j = 0; j <= 160; j++) {
          double s0 = both.constantPart() * i / 40;
          double theta = both.proportionalPart() * (0.3 + j * 0.015);
          double misfit = misfit(s0, theta, levels, differences);
          assertTrue(misfit >= both.misfit() - 1e-9, s0 + ", " + theta + " fits better");
          if (misfit <= most) {
            low = Math.min(low, Math.hypot(s0, theta * level));
            high = Math.max(high, Math.hypot(s0, theta * level));
          }
        }
      }
      Interval interval = both.deviationInterval(level, 0.95);
      String what = "set " + set + ": end of the interval at " + level;
      String how = "grid of 26 000 pairs of parts";
      Evidence.own(PrecisionProfile.class, what, how + ", lower", low, interval.lower(), 0.03);
      Evidence.own(PrecisionProfile.class, what, how + ", upper", high, interval.upper(), 0.03);
      assertTrue(interval.lower() <= low * 1.000001 && interval.upper() >= high * 0.999999);
    }
  }

  private static double misfit(double s0, double theta, double[] levels, double[] differences) {
    double sum = 0;
    for (int i = 0; i < levels.length; i++) {
      double v = s0 * s0 + theta * theta * levels[i] * levels[i];
      sum += 0.5 * Math.log(4 * Math.PI * v) + differences[i] * differences[i] / (4 * v);
    }
    return sum;
  }

  @Test
  void theConstantFormIsTheDeviationOfThePairs() {
    double[] differences = column(0, "differences");
    DuplicateDeviation pairs = DuplicateDeviation.of(differences);
    PrecisionProfile profile = fit(0, Form.CONSTANT);
    assertAgree(13, pairs.deviation(), profile.constantPart(), "deviation");
    assertEquals(0, profile.proportionalPart());
    Interval expected = pairs.interval(0.9);
    Interval interval = profile.deviationInterval(3, 0.9);
    assertAgree(13, expected.lower(), interval.lower(), "lower");
    assertAgree(13, expected.upper(), interval.upper(), "upper");
    assertEquals(new Interval(0, 0), profile.proportionInterval(0.9));
  }

  @Test
  void theProportionalFormIsTheDeviationOfRelativeDifferences() {
    double[] levels = column(3, "levels");
    double[] relative = column(3, "differences");
    Arrays.setAll(relative, i -> relative[i] / levels[i]);
    DuplicateDeviation pairs = DuplicateDeviation.of(relative);
    PrecisionProfile profile = fit(3, Form.PROPORTIONAL);
    assertAgree(13, pairs.deviation(), profile.proportionalPart(), "part");
    assertAgree(13, 5 * pairs.deviation(), profile.deviationAt(5), "deviation");
    assertEquals(0, profile.constantPart());
    assertAgree(13, pairs.interval(0.9).upper(), profile.proportionInterval(0.9).upper(), "upper");
    assertAgree(
        13, 5 * pairs.interval(0.9).lower(), profile.deviationInterval(5, 0.9).lower(), "lower");
  }

  @Test
  void formsOfOnePartHaveOneDegreeOfFreedomAPair() {
    for (Form form : List.of(Form.CONSTANT, Form.PROPORTIONAL)) {
      assertEquals(40, fit(0, form).degreesOfFreedomAt(0.1));
    }
  }

  /**
   * The variance of the fitted variance over many samples of known parts, far from either bound,
   * against the one its degrees of freedom stand for.
   */
  @Test
  void degreesOfFreedomTellTheScatterOfTheDeviation() {
    SplittableRandom random = new SplittableRandom(17);
    int samples = 1500;
    double[] places = {0.05, 0.5, 5};
    double[][] seen = new double[3][samples];
    double[] freedom = new double[3];
    double[] levels = new double[100];
    double[] differences = new double[100];
    Arrays.setAll(levels, i -> 0.05 * Math.pow(100, i / 99.0));
    for (int sample = 0; sample < samples; sample++) {
      for (int i = 0; i < 100; i++) {
        double deviation = Math.hypot(0.02, 0.04 * levels[i]);
        differences[i] = Math.sqrt(2) * deviation * Simulation.normal(random);
      }
      PrecisionProfile both = PrecisionProfile.fit(Form.QUADRATURE, levels, differences);
      for (int k = 0; k < 3; k++) {
        seen[k][sample] = Math.pow(both.deviationAt(places[k]), 2);
        freedom[k] += both.degreesOfFreedomAt(places[k]) / samples;
      }
    }
    for (int k = 0; k < 3; k++) {
      double mean = Arrays.stream(seen[k]).average().orElseThrow();
      double relative = 0;
      for (double variance : seen[k]) {
        relative += Math.pow(variance / mean - 1, 2) / samples;
      }
      Evidence.own(
          PrecisionProfile.class,
          "degrees of freedom at " + places[k] + ", 100 pairs",
          "scatter of 1500 samples",
          2 / relative,
          freedom[k],
          0.12);
      assertEquals(1, 2 / relative / freedom[k], 0.12, "level " + places[k]);
    }
  }

  @Test
  void degreesOfFreedomFollowNeitherUnitNorScaleAndAreFewestAtTheEnds() {
    PrecisionProfile plain = fit(1, Form.QUADRATURE);
    double[] levels = Arrays.stream(column(1, "levels")).map(v -> 1000 * v).toArray();
    PrecisionProfile scaled =
        PrecisionProfile.fit(Form.QUADRATURE, levels, column(1, "differences"));
    for (double level : new double[] {0, 0.1, 1, 100}) {
      double freedom = plain.degreesOfFreedomAt(level);
      assertAgree(7, freedom, scaled.degreesOfFreedomAt(1000 * level), "level " + level);
      assertTrue(freedom >= 1 && freedom <= plain.pairs(), "level " + level + ": " + freedom);
    }
  }

  @Test
  void aPartOfZeroIsALegalAnswer() {
    PrecisionProfile flat = fit(2, Form.QUADRATURE);
    assertEquals(0, flat.proportionalPart());
    assertEquals(flat.constantPart(), flat.deviationAt(100));
    Interval part = flat.proportionInterval(0.95);
    assertEquals(0, part.lower());
    assertTrue(part.upper() > 0.01 && part.upper() < 0.1, "upper " + part.upper());
    assertAgree(
        12, fit(2, Form.CONSTANT).misfit(), flat.misfit(), "the boundary is the smaller form");
    Interval constant = fit(3, Form.QUADRATURE).deviationInterval(0, 0.95);
    assertEquals(0, constant.lower());
  }

  @Test
  void followsTheScaleOfLevelsAndDifferences() {
    double[] levels = column(1, "levels");
    double[] differences = column(1, "differences");
    PrecisionProfile plain = PrecisionProfile.fit(Form.QUADRATURE, levels, differences);
    PrecisionProfile scaled =
        PrecisionProfile.fit(
            Form.QUADRATURE,
            Arrays.stream(levels).map(v -> 1000 * v).toArray(),
            Arrays.stream(differences).map(v -> -0.01 * v).toArray());
    assertAgree(9, 0.01 * plain.constantPart(), scaled.constantPart(), "constant part");
    assertAgree(9, 1e-5 * plain.proportionalPart(), scaled.proportionalPart(), "proportional");
    Interval one = plain.deviationInterval(0.7, 0.8);
    Interval other = scaled.deviationInterval(700, 0.8);
    assertAgree(7, 0.01 * one.lower(), other.lower(), "lower");
    assertAgree(7, 0.01 * one.upper(), other.upper(), "upper");
    Interval part = plain.proportionInterval(0.8);
    assertAgree(7, 1e-5 * part.upper(), scaled.proportionInterval(0.8).upper(), "part");
    assertAgree(7, 1e-5 * part.lower(), scaled.proportionInterval(0.8).lower(), "part");
  }

  @Test
  void farAboveAndFarBelowThePartsTakeOver() {
    PrecisionProfile both = fit(1, Form.QUADRATURE);
    assertAgree(6, both.proportionalPart() * 1e5, both.deviationAt(1e5), "far above");
    Interval part = both.proportionInterval(0.95);
    Interval far = both.deviationInterval(1e5, 0.95);
    assertAgree(6, 1e5 * part.lower(), far.lower(), "lower");
    assertAgree(6, 1e5 * part.upper(), far.upper(), "upper");
    assertAgree(6, both.constantPart(), both.deviationAt(1e-5), "far below");
  }

  @Test
  void anOrderOfPairsDoesNotMatterAndAHigherConfidenceIsWider() {
    double[] levels = column(4, "levels");
    double[] differences = column(4, "differences");
    int n = levels.length;
    double[] turned = new double[n];
    double[] turnedDifferences = new double[n];
    for (int i = 0; i < n; i++) {
      turned[i] = levels[n - 1 - i];
      turnedDifferences[i] = differences[n - 1 - i];
    }
    PrecisionProfile one = PrecisionProfile.fit(Form.QUADRATURE, levels, differences);
    PrecisionProfile other = PrecisionProfile.fit(Form.QUADRATURE, turned, turnedDifferences);
    assertAgree(10, one.constantPart(), other.constantPart(), "part");
    Interval before = new Interval(one.deviationAt(0.4), one.deviationAt(0.4));
    for (double confidence : new double[] {0.01, 0.5, 0.8, 0.95, 0.999}) {
      Interval now = one.deviationInterval(0.4, confidence);
      assertTrue(now.lower() < before.lower() && now.upper() > before.upper(), "wider");
      before = now;
    }
  }

  @Test
  void saysWhatIsMissing() {
    double[] levels = new double[25];
    double[] differences = new double[25];
    Arrays.setAll(levels, i -> 1 + 2.0 * i / 24);
    Arrays.setAll(differences, i -> 0.01 * ((i * 7) % 5 - 2));
    assertInstanceOf(PrecisionChoice.Chosen.class, PrecisionChoice.of(levels, differences));
    assertEquals(
        new PrecisionChoice.TooFewPairs(24),
        PrecisionChoice.of(Arrays.copyOf(levels, 24), Arrays.copyOf(differences, 24)));
    assertEquals(
        new PrecisionChoice.TooFewPairs(0), PrecisionChoice.of(new double[0], new double[0]));
    levels[24] = 2.99;
    assertEquals(new PrecisionChoice.LevelsAlike(2.99), PrecisionChoice.of(levels, differences));
    levels[24] = 3;
    assertEquals(new PrecisionChoice.NoDifference(25), PrecisionChoice.of(levels, new double[25]));
  }

  /**
   * The simpler form is taken where it is true, nearly always, and both parts where both matter.
   */
  @Test
  void choosesRightMostOfTheTime() {
    SplittableRandom random = new SplittableRandom(81);
    List<double[]> truths =
        List.of(new double[] {0.02, 0}, new double[] {0, 0.05}, new double[] {0.02, 0.05});
    List<Form> forms = List.of(Form.CONSTANT, Form.PROPORTIONAL, Form.QUADRATURE);
    int[] right = new int[3];
    for (int trial = 0; trial < 100; trial++) {
      for (int k = 0; k < 3; k++) {
        double[] truth = truths.get(k);
        double[] levels = new double[40];
        double[] differences = new double[40];
        for (int i = 0; i < 40; i++) {
          levels[i] = 0.05 * Math.pow(100, random.nextDouble());
          differences[i] =
              Math.sqrt(2) * Math.hypot(truth[0], truth[1] * levels[i]) * Simulation.normal(random);
        }
        PrecisionChoice.Chosen chosen =
            assertInstanceOf(PrecisionChoice.Chosen.class, PrecisionChoice.of(levels, differences));
        right[k] += chosen.profile().form() == forms.get(k) ? 1 : 0;
      }
    }
    assertTrue(right[0] >= 80 && right[1] >= 80 && right[2] >= 80, Arrays.toString(right));
  }

  @Test
  void partsAreNotToldApartAtOneLevel() {
    double[] levels = {2, 2, 2, 2};
    double[] differences = {0.1, 0.2, 0.3, 1};
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> PrecisionProfile.fit(PrecisionProfile.Form.QUADRATURE, levels, differences));
    assertEquals("all levels are equal: 2.0", refused.getMessage());
  }
}
