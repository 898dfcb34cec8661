package org.quietline.bench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A unit as the bench writes it.
 *
 * <p>Known are mass fractions ({@code % mass}, {@code g/kg}, {@code mg/g}, {@code mg/kg}, {@code
 * ppm} by mass), each also with a basis for acidity ({@code % mass as oleic}), acid number ({@code
 * mg KOH/g}), and volumes ({@code mL}, {@code µL}). Any other symbol is a unit of its own that
 * converts only to itself; no spelling is guessed.
 *
 * @param symbol the unit's symbol, as printed
 */
public record Unit(String symbol) {
  private static final String ACID_NUMBER = "mg KOH/g";
  private static final String AS = " as ";

  /** Powers of ten from the unit to the pure number 1 (kg/kg). */
  private static final Map<String, Integer> MASS_FRACTIONS =
      Map.of("% mass", -2, "g/kg", -3, "mg/g", -3, "mg/kg", -6, "ppm", -6);

  /** Powers of ten from the unit to the litre; the two signs for micro look alike. */
  private static final Map<String, Integer> VOLUMES =
      new TreeMap<>(Map.of("mL", -3, "\u00B5L", -6, "\u03BCL", -6, "uL", -6));

  private static final List<String> FRACTIONS_IN_ORDER =
      List.of("% mass", "g/kg", "mg/g", "mg/kg", "ppm");

  /** Checks and trims the symbol. */
  public Unit {
    symbol = symbol.strip();
    Checks.text("unit", symbol);
  }

  /**
   * What a unit counts. An acid number is the mass fraction of KOH that neutralizes the acid, so
   * that it differs from a mass fraction of an acid only by the molar mass.
   *
   * @param volume whether it is a volume, else a mass fraction
   * @param power the power of ten from the unit to the litre or to the pure number 1
   * @param molarMass of what it is expressed as, if of anything
   */
  private record Scale(boolean volume, int power, Optional<BigDecimal> molarMass) {}

  private Optional<Scale> scale() {
    if (symbol.equals(ACID_NUMBER)) {
      return Optional.of(new Scale(false, -3, Optional.of(Acid.POTASSIUM_HYDROXIDE)));
    }
    Integer volume = VOLUMES.get(symbol);
    if (volume != null) {
      return Optional.of(new Scale(true, volume, Optional.empty()));
    }
    Optional<Acid> acid = basis();
    Integer power = MASS_FRACTIONS.get(acid.isPresent() ? withoutBasis() : symbol);
    return power == null
        ? Optional.empty()
        : Optional.of(new Scale(false, power, acid.map(Acid::molarMass)));
  }

  private String withoutBasis() {
    return symbol.substring(0, symbol.lastIndexOf(AS));
  }

  /**
   * The acid as which the unit expresses acidity.
   *
   * @return empty when it names none of those known here
   */
  public Optional<Acid> basis() {
    int as = symbol.lastIndexOf(AS);
    return as < 0 || !MASS_FRACTIONS.containsKey(symbol.substring(0, as))
        ? Optional.empty()
        : Acid.parse(symbol.substring(as + AS.length()));
  }

  /**
   * This mass fraction expressed as an acid.
   *
   * @param acid the basis
   * @return empty when this is not a mass fraction, or has a basis already
   */
  public Optional<Unit> as(Acid acid) {
    return isPlainMassFraction()
        ? Optional.of(new Unit(symbol + AS + acid.key()))
        : Optional.empty();
  }

  /**
   * Whether it is a mass fraction that names no basis.
   *
   * @return true for {@code % mass}, {@code g/kg}, {@code mg/g}, {@code mg/kg} and {@code ppm}
   */
  public boolean isPlainMassFraction() {
    return MASS_FRACTIONS.containsKey(symbol);
  }

  /**
   * Whether it is acid number.
   *
   * @return true for {@code mg KOH/g}
   */
  public boolean isAcidNumber() {
    return symbol.equals(ACID_NUMBER);
  }

  /**
   * Whether the unit is one that can convert to another.
   *
   * @return false for a unit of its own
   */
  public boolean isKnown() {
    return scale().isPresent();
  }

  /**
   * The factor that takes a number in this unit to another unit: {@code 10ᵏ · M(other) / M(this)},
   * where the molar masses count only if both units name a basis.
   *
   * <ul>
   *   <li>A mass fraction without a basis converts to one with a basis by the power of ten alone:
   *       the basis was not written, and is the other's.
   *   <li>A basis is never dropped, and acid number never converts to a mass fraction without one.
   * </ul>
   *
   * @param other the wanted unit
   * @return exact for powers of ten, else to 16 digits; empty when the two do not convert
   */
  public Optional<BigDecimal> factorTo(Unit other) {
    if (symbol.equals(other.symbol)) {
      return Optional.of(BigDecimal.ONE);
    }
    Optional<Scale> from = scale();
    Optional<Scale> to = other.scale();
    return from.isEmpty() || to.isEmpty() || from.get().volume() != to.get().volume()
        ? Optional.empty()
        : massRatio(other, from.get(), to.get())
            .map(ratio -> ratio.scaleByPowerOfTen(from.get().power() - to.get().power()));
  }

  private static Optional<BigDecimal> massRatio(Unit other, Scale from, Scale to) {
    if (from.molarMass().equals(to.molarMass())) {
      return Optional.of(BigDecimal.ONE);
    }
    if (from.molarMass().isPresent() && to.molarMass().isPresent()) {
      return Optional.of(
          to.molarMass().get().divide(from.molarMass().get(), MathContext.DECIMAL64));
    }
    return from.molarMass().isEmpty() && other.basis().isPresent()
        ? Optional.of(BigDecimal.ONE)
        : Optional.empty();
  }

  /**
   * Units in which a number may be written where this unit is wanted, itself first. Of units with a
   * basis only percentages are named.
   *
   * @return all that convert, in the order in which they are best told
   */
  public List<Unit> writable() {
    List<String> symbols = new ArrayList<>(FRACTIONS_IN_ORDER);
    symbols.add(ACID_NUMBER);
    Arrays.stream(Acid.values())
        .forEach(a -> symbols.add(FRACTIONS_IN_ORDER.get(0) + AS + a.key()));
    symbols.add("\u00B5L");
    symbols.add("mL");
    List<Unit> units = new ArrayList<>(List.of(this));
    symbols.stream()
        .map(Unit::new)
        .filter(u -> !u.equals(this) && u.factorTo(this).isPresent())
        .forEach(units::add);
    return List.copyOf(units);
  }

  @Override
  public String toString() {
    return symbol;
  }
}
