package org.quietline.stats.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Evidence;
import org.quietline.stats.Reference;
import org.quietline.stats.compare.Dixon.Form;

class DixonTest {
  private static final Class<?> SUBJECT = Dixon.class;

  @Test
  void outsideLibrary() {
    Reference reference = Reference.read("dixon-chances");
    for (int i = 0; i < 12; i++) {
      String at = "/expected/rows/" + i + "/";
      Form form = Form.valueOf(reference.at(at + 0).asText());
      int n = reference.at(at + 1).asInt();
      double ratio = reference.number(at + 2);
      double got = new Dixon(form, Suspect.LARGEST, n, 0, ratio).chance();
      reference.check(SUBJECT, form + " above " + ratio + " of " + n, at + 3, got);
    }
  }

  /** The tables were computed by hand; the file lists the cells that are off, by up to 0.0047. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 20, 25})
  void publishedCriticalValues(int n) {
    Reference table = Reference.read("dixon-critical-values");
    Form form = Form.forSize(n);
    double[] chances = table.numbers("/data/chances", 2);
    for (int i = 0; i < chances.length; i++) {
      double got = Dixon.criticalValue(form, Suspect.SMALLEST, n, chances[i]);
      String what = chances[i] + " value of " + n + ", one end";
      table.check(SUBJECT, what, "/expected/oneEnd/" + n + "/" + i, got, 0.0048);
      double own = table.number("/crosscheck/own/one " + n + "/" + i);
      assertEquals(own, got, 0.00002, what);
    }
    if (n <= 7) {
      double got = Dixon.criticalValue(form, Suspect.EITHER, n, 0.05);
      table.check(
          SUBJECT,
          "0.05 value of " + n + ", either",
          "/expected/eitherEnd/" + n + "/0",
          got,
          0.0026);
    }
  }

  /** The shapes of three values are the angles of a circle, all equally likely. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 0.9, 0.99})
  void threeValuesHaveAFormula(double r) {
    // x1 = 0, x2 = r, x3 = 1 has its place on the circle of shapes at an angle from x1 = x2
    double angle = Math.atan2(Math.sqrt(3) * r, 2 - r);
    double expected = 1 - angle / (Math.PI / 3);
    double got = new Dixon(Form.R10, Suspect.LARGEST, 3, 0, r).chance();
    Evidence.own(SUBJECT, "three values above " + r, "closed form", expected, got, 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"3, R10", "7, R10", "8, R11", "10, R11", "11, R21", "13, R21", "14, R22", "30, R22"})
  void theFormFollowsTheSize(int n, Form form) {
    assertEquals(form, Form.forSize(n));
  }

  @Test
  void ratiosByHand() {
    double[] values = {5, 1, 11, 6, 8, 20};
    assertEquals(9 / 19.0, Dixon.of(Form.R10, Suspect.LARGEST, values).statistic(), 1e-15);
    assertEquals(4 / 10.0, Dixon.of(Form.R11, Suspect.SMALLEST, values).statistic(), 1e-15);
    assertEquals(12 / 15.0, Dixon.of(Form.R21, Suspect.LARGEST, values).statistic(), 1e-15);
    assertEquals(5 / 7.0, Dixon.of(Form.R22, Suspect.SMALLEST, values).statistic(), 1e-15);
    Dixon either = Dixon.of(Suspect.EITHER, values);
    assertEquals(new Dixon(Form.R10, Suspect.EITHER, 6, 5, 9 / 19.0), either);
    assertEquals(List.of(5), either.places());
    assertEquals(OutlierTest.Certainty.AT_MOST, either.certainty());
    assertEquals(List.of(1), Dixon.of(Suspect.SMALLEST, values).places());
    Dixon largest = Dixon.of(Suspect.LARGEST, values);
    assertEquals(OutlierTest.Certainty.EXACT, largest.certainty());
    assertRelative(2 * largest.chance(), either.chance(), 1e-12, "either end");
    assertEquals(1, Dixon.of(Suspect.EITHER, 1, 2, 3, 4, 5).chance());
  }

  @Test
  void exactForEitherEndOnlyAboveOneHalf() {
    Dixon above = new Dixon(Form.R10, Suspect.EITHER, 5, 0, 0.5);
    assertEquals(OutlierTest.Certainty.EXACT, above.certainty());
    Dixon below = new Dixon(Form.R10, Suspect.EITHER, 5, 0, 0.499);
    assertEquals(OutlierTest.Certainty.AT_MOST, below.certainty());
    Dixon other = new Dixon(Form.R11, Suspect.EITHER, 5, 0, 0.9);
    assertEquals(OutlierTest.Certainty.AT_MOST, other.certainty());
  }

  @Test
  void endsOfTheRange() {
    for (Form form : Form.values()) {
      assertEquals(1, new Dixon(form, Suspect.LARGEST, 12, 0, 0).chance(), 1e-9, form.toString());
      assertEquals(0, new Dixon(form, Suspect.LARGEST, 12, 0, 1).chance(), 1e-12, form.toString());
    }
    assertEquals(1, new Dixon(Form.R22, Suspect.LARGEST, 100, 0, 0).chance(), 1e-7);
    double near = new Dixon(Form.R10, Suspect.LARGEST, 3, 0, 0.99999).chance();
    assertTrue(near > 0 && near < 1e-4);
  }
}
