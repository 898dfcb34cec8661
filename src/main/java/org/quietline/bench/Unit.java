package org.quietline.bench;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/**
 * A unit as the bench writes it. Units of mass fraction convert to each other by exact powers of
 * ten; any other unit converts only to itself.
 *
 * @param symbol the unit's symbol, as printed
 */
public record Unit(String symbol) {
  /** Powers of ten from the unit to the pure number 1 (kg/kg). */
  private static final Map<String, Integer> MASS_FRACTION =
      Map.of("% mass", -2, "g/kg", -3, "mg/g", -3, "mg/kg", -6, "ppm", -6);

  /** Checks and trims the symbol. */
  public Unit {
    symbol = symbol.strip();
    Checks.text("unit", symbol);
  }

  /**
   * The exact factor that takes a number in this unit to another unit.
   *
   * @param other the wanted unit
   * @return empty when the two do not convert
   */
  public Optional<BigDecimal> factorTo(Unit other) {
    if (symbol.equals(other.symbol)) {
      return Optional.of(BigDecimal.ONE);
    }
    Integer from = MASS_FRACTION.get(symbol);
    Integer to = MASS_FRACTION.get(other.symbol);
    if (from == null || to == null) {
      return Optional.empty();
    }
    return Optional.of(BigDecimal.ONE.scaleByPowerOfTen(from - to));
  }

  @Override
  public String toString() {
    return symbol;
  }
}
