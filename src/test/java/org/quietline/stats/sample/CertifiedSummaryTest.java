package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.stats.Reference;

/** NIST's univariate Statistical Reference Datasets, certified to 15 digits. */
class CertifiedSummaryTest {

  @ParameterizedTest
  @CsvSource({
    "lew, 200",
    "lottery, 218",
    "mavro, 50",
    "michelso, 100",
    "numacc1, 3",
    "numacc2, 1001"
  })
  void valuesAsDoubles(String name, int n) {
    Reference reference = Reference.read("nist-strd-univ-" + name);
    check(reference, reference.numbers("/data/y", n), "", 13, 13);
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
    check(reference, digits, "", 13, 13);
  }

  /** As doubles the readings themselves are off by up to 1e-9, which leaves 9 and 8 digits. */
  @ParameterizedTest
  @CsvSource({"3, 9", "4, 8"})
  void largeOffset(int number, int digits) {
    Reference reference = Reference.read("numacc" + number + "-by-definition");
    List<BigDecimal> values = new ArrayList<>();
    values.add(new BigDecimal(reference.at("/data/first").asText()));
    for (int i = 0; i < reference.at("/data/times").asInt(); i++) {
      reference.at("/data/then").forEach(v -> values.add(new BigDecimal(v.asText())));
    }
    double[] doubles = values.stream().mapToDouble(BigDecimal::doubleValue).toArray();
    check(reference, doubles, ", as doubles", 15, digits);
    Summary exact = Summary.ofDecimals(values);
    String what = ", as decimals";
    reference.checkDigits(Summary.class, "mean" + what, "/expected/mean", exact.mean(), 15);
    reference.checkDigits(
        Summary.class, "deviation" + what, "/expected/sd_n_minus_1", exact.deviation(), 14);
    assertEquals(1001, exact.n());
    double[] shifted =
        values.stream().mapToDouble(v -> v.subtract(values.get(0)).doubleValue()).toArray();
    reference.checkDigits(
        SerialDependence.class,
        "lag-1 autocorrelation about the first value",
        "/expected/lag1_autocorrelation",
        SerialDependence.of(shifted).lag1(),
        14);
  }

  private static void check(
      Reference reference, double[] values, String how, double ofMean, double ofSpread) {
    Summary summary = Summary.of(values);
    assertEquals(reference.at("/expected/n").asInt(), summary.n());
    reference.checkDigits(Summary.class, "mean" + how, "/expected/mean", summary.mean(), ofMean);
    reference.checkDigits(
        Summary.class, "deviation" + how, "/expected/sd_n_minus_1", summary.deviation(), ofSpread);
    reference.checkDigits(
        SerialDependence.class,
        "lag-1 autocorrelation" + how,
        "/expected/lag1_autocorrelation",
        SerialDependence.of(values).lag1(),
        ofSpread);
  }

  @Test
  void decimalsAreSummarisedAsTheyStand() {
    List<BigDecimal> values =
        StreamSupport.stream(
                List.of("100000000000000000.1", "100000000000000000.3").spliterator(), false)
            .map(BigDecimal::new)
            .toList();
    Summary found = Summary.ofDecimals(values);
    assertEquals(1e17, found.mean());
    assertEquals(Math.sqrt(0.02), found.deviation(), 1e-16);
  }
}
