package org.quietline.bench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The fatty acid as which acidity is expressed, its basis: one saturated or unsaturated acid {@code
 * CₙHₘO₂} stands for all that are in the oil. A number without its basis cannot be compared.
 *
 * <p>Molar masses come from the formulas and the IUPAC standard atomic weights of 1997, C 12.0107,
 * H 1.00794, O 15.9994, K 39.0983. They lie within today's intervals, and the factors printed in
 * the trade (1.9863 for oleic) come from them; the rounded weights of today (12.011, 1.008, 15.999,
 * 39.098) move the fifth digit by less than one, 1.9862.
 */
public enum Acid {
  /** C₁₈H₃₄O₂, the usual basis. */
  OLEIC(18, 34),
  /** C₁₆H₃₂O₂, customary for palm oil. */
  PALMITIC(16, 32),
  /** C₁₂H₂₄O₂, customary for coconut and palm kernel oil. */
  LAURIC(12, 24),
  /** C₁₈H₃₆O₂, met with animal fat. */
  STEARIC(18, 36),
  /** C₁₈H₃₂O₂, met with soy and sunflower oil. */
  LINOLEIC(18, 32);

  private static final BigDecimal C = new BigDecimal("12.0107");
  private static final BigDecimal H = new BigDecimal("1.00794");
  private static final BigDecimal O = new BigDecimal("15.9994");
  private static final BigDecimal K = new BigDecimal("39.0983");

  /** Grams of potassium hydroxide, KOH, in a mole. */
  static final BigDecimal POTASSIUM_HYDROXIDE = K.add(O).add(H);

  private final int carbons;
  private final int hydrogens;

  Acid(int carbons, int hydrogens) {
    this.carbons = carbons;
    this.hydrogens = hydrogens;
  }

  /**
   * The word that names the acid in {@code bench.toml} and in a unit.
   *
   * @return such as {@code oleic}
   */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * Reads {@link #key()}.
   *
   * @param word the word
   * @return empty when it names no acid known here
   */
  public static Optional<Acid> parse(String word) {
    return Arrays.stream(values()).filter(a -> a.key().equals(word)).findFirst();
  }

  /**
   * The words of all acids.
   *
   * @return in the order of this enumeration
   */
  public static List<String> keys() {
    return Arrays.stream(values()).map(Acid::key).toList();
  }

  /** Grams in a mole. */
  BigDecimal molarMass() {
    return C.multiply(BigDecimal.valueOf(carbons))
        .add(H.multiply(BigDecimal.valueOf(hydrogens)))
        .add(O.add(O));
  }

  /**
   * The acid number that one percent by mass of this acid makes: {@code 10 · M(KOH) / M(acid)}.
   * Source: the definition of acid number, the milligrams of KOH that neutralize one gram.
   *
   * @return in mg KOH/g for each % mass, to 16 digits
   */
  public BigDecimal acidNumberPerPercent() {
    return POTASSIUM_HYDROXIDE.multiply(BigDecimal.TEN).divide(molarMass(), MathContext.DECIMAL64);
  }
}
