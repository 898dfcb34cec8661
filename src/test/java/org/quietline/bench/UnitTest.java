package org.quietline.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {
  private static final Path FACTORS =
      Path.of("shared", "reference", "practitioner-acid-factors.json");

  private static Optional<BigDecimal> factor(String from, String to) {
    return new Unit(from).factorTo(new Unit(to));
  }

  @ParameterizedTest
  @CsvSource({
    "% mass, mg/kg, 10000",
    "mg/kg, % mass, 0.0001",
    "ppm, mg/kg, 1",
    "g/kg, % mass, 0.1",
    "mg/g, ppm, 1000",
    "mg/g, g/kg, 1",
    "mg KOH/g, mg KOH/g, 1",
    "mL, \u00B5L, 1000",
    "uL, mL, 0.001",
    "\u03BCL, \u00B5L, 1",
    "% mass, % mass as oleic, 1",
    "ppm, % mass as oleic, 0.0001",
    "mg/kg as lauric, g/kg as lauric, 0.001"
  })
  void powers_of_ten_are_exact(String from, String to, BigDecimal factor) {
    BigDecimal found = factor(from, to).orElseThrow();
    assertEquals(0, found.compareTo(factor), found + " for " + from + " to " + to);
    assertEquals(1, found.precision(), "no digit is added");
  }

  @Test
  void acid_factors_agree_with_the_printed_ones_and_with_a_sum_made_elsewhere() throws IOException {
    JsonNode reference = new ObjectMapper().readTree(FACTORS.toFile());
    JsonNode rows = reference.requiredAt("/expected/rows");
    assertEquals(Acid.values().length, rows.size());
    double half = reference.requiredAt("/data/halfUnitOfPrinted").doubleValue();
    for (JsonNode row : rows) {
      Acid acid = Acid.parse(row.requiredAt("/acid").asText()).orElseThrow();
      BigDecimal exact = new BigDecimal(row.requiredAt("/factor").asText());
      assertEquals(exact.round(MathContext.DECIMAL64), acid.acidNumberPerPercent());
      assertEquals(row.requiredAt("/printed").doubleValue(), exact.doubleValue(), half);
      double abridged = row.requiredAt("/abridged").doubleValue();
      assertEquals(1, abridged / exact.doubleValue(), 5e-5, "the choice of weights is no matter");
      double there = factor("% mass as " + acid.key(), "mg KOH/g").orElseThrow().doubleValue();
      assertEquals(exact.doubleValue(), there, 1e-15 * there * 4);
      double back = factor("mg KOH/g", "% mass as " + acid.key()).orElseThrow().doubleValue();
      assertEquals(1, there * back, 1e-15);
    }
  }

  /** Published worked example: acidity of 0.50 mg KOH/g, told as an acid. */
  @ParameterizedTest
  @CsvSource({"oleic, 0.2517", "palmitic, 0.2285"})
  void half_a_milligram_of_koh_is_a_quarter_of_a_percent(String acid, double percent) {
    BigDecimal factor = factor("mg KOH/g", "% mass as " + acid).orElseThrow();
    assertEquals(percent, 0.50 * factor.doubleValue(), 5e-5);
  }

  @Test
  void a_change_of_basis_is_the_ratio_of_molar_masses() {
    double palmitic = factor("% mass as oleic", "% mass as palmitic").orElseThrow().doubleValue();
    assertEquals(256.43 / 282.46, palmitic, 5e-5);
    double lauric = factor("% mass as oleic", "mg/kg as lauric").orElseThrow().doubleValue();
    assertEquals(200.32 / 282.46 * 1e4, lauric, 0.5);
    for (Acid a : Acid.values()) {
      for (Acid b : Acid.values()) {
        double over = factor("% mass as " + a.key(), "mg KOH/g").orElseThrow().doubleValue();
        double down = factor("mg KOH/g", "g/kg as " + b.key()).orElseThrow().doubleValue();
        double direct =
            factor("% mass as " + a.key(), "g/kg as " + b.key()).orElseThrow().doubleValue();
        assertEquals(direct, over * down, 1e-14 * direct, a + " to " + b);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "mg KOH/g, % mass",
    "% mass, mg KOH/g",
    "% mass as oleic, % mass",
    "% mass, mL",
    "mL, g/kg",
    "%, % mass",
    "wt%, % mass",
    "% Mass, % mass",
    "mgKOH/g, mg KOH/g",
    "ppm (v/v), ppm",
    "ohm\u00B7cm, ohm\u00B7m",
    "% mass as olive, % mass as oleic",
    "mg KOH/g as oleic, mg KOH/g"
  })
  void nothing_else_converts(String from, String to) {
    assertEquals(Optional.empty(), factor(from, to));
  }

  @Test
  void a_unit_of_its_own_converts_to_itself_only() {
    Unit own = new Unit(" ohm\u00B7cm ");
    assertEquals("ohm\u00B7cm", own.toString());
    assertEquals(Optional.of(BigDecimal.ONE), own.factorTo(own));
    assertEquals(List.of(own), own.writable());
    assertFalse(own.isKnown());
  }

  @Test
  void a_basis_is_part_of_the_symbol() {
    Unit oleic = new Unit("% mass").as(Acid.OLEIC).orElseThrow();
    assertEquals(new Unit("% mass as oleic"), oleic);
    assertEquals(Optional.of(Acid.OLEIC), oleic.basis());
    assertEquals(Optional.empty(), oleic.as(Acid.LAURIC), "it has one already");
    assertEquals(Optional.empty(), new Unit("mg KOH/g").as(Acid.OLEIC));
    assertTrue(new Unit("ppm").isPlainMassFraction());
    assertFalse(oleic.isPlainMassFraction());
    assertTrue(new Unit("mg KOH/g").isAcidNumber());
  }

  @Test
  void what_may_be_written_is_told_with_the_unit_itself_first() {
    assertEquals(
        List.of("mg/kg", "% mass", "g/kg", "mg/g", "ppm"), symbols(new Unit("mg/kg").writable()));
    assertEquals(
        List.of(
            "% mass as oleic",
            "% mass",
            "g/kg",
            "mg/g",
            "mg/kg",
            "ppm",
            "mg KOH/g",
            "% mass as palmitic",
            "% mass as lauric",
            "% mass as stearic",
            "% mass as linoleic"),
        symbols(new Unit("% mass as oleic").writable()));
    assertEquals(List.of("mL", "\u00B5L"), symbols(new Unit("mL").writable()));
  }

  private static List<String> symbols(List<Unit> units) {
    return units.stream().map(Unit::symbol).toList();
  }

  @Test
  void every_acid_is_found_by_its_word() {
    Arrays.stream(Acid.values()).forEach(a -> assertEquals(Optional.of(a), Acid.parse(a.key())));
    assertEquals(Optional.empty(), Acid.parse("Oleic"));
    assertEquals(List.of("oleic", "palmitic", "lauric", "stearic", "linoleic"), Acid.keys());
  }
}
