package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.quietline.stats.Digits.assertAgree;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.model.StraightLine;
import org.quietline.stats.sample.SerialDependence;
import org.quietline.stats.sample.Summary;

/** NIST Statistical Reference Datasets, certified to 15 digits; at least 13 must agree. */
class CertifiedDataTest {
  private static final double DIGITS = 13;

  @ParameterizedTest
  @CsvSource({
    "lew, 200",
    "lottery, 218",
    "mavro, 50",
    "michelso, 100",
    "numacc1, 3",
    "numacc2, 1001"
  })
  void univariate(String name, int n) {
    Reference reference = Reference.read("nist-strd-univ-" + name);
    check(reference, reference.numbers("/data/y", n), name);
  }

  @Test
  void digitsOfPiAsTheFileHasThem() {
    Reference reference = Reference.read("nist-strd-univ-pidigits");
    double[] digits =
        reference
            .at("/data/y_as_digit_string")
            .asText()
            .chars()
            .mapToDouble(c -> Character.digit(c, 10))
            .toArray();
    assertEquals(5000, digits.length);
    check(reference, digits, "pidigits");
  }

  private static void check(Reference reference, double[] values, String name) {
    Summary summary = Summary.of(values);
    assertEquals(reference.at("/expected/n").asInt(), summary.n());
    assertAgree(DIGITS, reference.number("/expected/mean"), summary.mean(), name + " mean");
    assertAgree(
        DIGITS,
        reference.number("/expected/sd_n_minus_1"),
        summary.deviation(),
        name + " deviation");
    assertAgree(
        DIGITS,
        reference.number("/expected/lag1_autocorrelation"),
        SerialDependence.of(values).lag1(),
        name + " lag 1");
  }

  @Test
  void norrisLine() {
    Reference reference = Reference.read("nist-strd-lls-norris");
    var rows = reference.rows("/data/rows", 36);
    double[] y = rows.stream().mapToDouble(r -> r[0]).toArray();
    double[] x = rows.stream().mapToDouble(r -> r[1]).toArray();
    StraightLine line = StraightLine.fit(x, y);
    assertAgree(DIGITS, reference.number("/expected/params/B0"), line.intercept(), "intercept");
    assertAgree(DIGITS, reference.number("/expected/params/B1"), line.slope(), "slope");
    assertAgree(DIGITS, reference.number("/expected/se/B0"), line.interceptError(), "error of B0");
    assertAgree(DIGITS, reference.number("/expected/se/B1"), line.slopeError(), "error of B1");
    assertAgree(
        DIGITS, reference.number("/expected/residual_sd"), line.residualDeviation(), "residual");
    assertEquals(reference.at("/expected/residual/df").asInt(), line.degreesOfFreedom());
  }
}
