package org.quietline.assess;

import java.util.Optional;
import org.quietline.bench.Acid;
import org.quietline.bench.Method;
import org.quietline.bench.Unit;

/**
 * Which methods measure acidity, and how an acid number and a free fatty acid belong together; the
 * factors are those of {@link Unit}.
 */
enum FattyAcid {
  ACID_NUMBER,
  FREE_FATTY_ACID;

  private static final Unit OF_ACID_NUMBER = new Unit("mg KOH/g");
  private static final Unit AS_OLEIC = new Unit("% mass as oleic");

  /** What a method measures; empty for a method of something else. */
  static Optional<FattyAcid> of(Method method) {
    Unit unit = method.unit();
    if (unit.isAcidNumber()) {
      return Optional.of(ACID_NUMBER);
    }
    boolean named = unit.isPlainMassFraction() && method.key().equals("free-fatty-acid");
    return named || unit.basis().isPresent() ? Optional.of(FREE_FATTY_ACID) : Optional.empty();
  }

  /** Whether two methods measure the two quantities. */
  static boolean areRelated(Method one, Method other) {
    Optional<FattyAcid> a = of(one);
    Optional<FattyAcid> b = of(other);
    return a.isPresent() && b.isPresent() && a.get() != b.get();
  }

  /**
   * The acid number that one unit of a free fatty acid makes; as oleic where nothing is said, and
   * for one percent as oleic where the bench measures only the acid number.
   */
  static double acidNumberPerUnit(Method freeFattyAcid) {
    Unit written = freeFattyAcid.unit();
    Unit unit = written.basis().isPresent() ? written : written.as(Acid.OLEIC).orElse(AS_OLEIC);
    return unit.factorTo(OF_ACID_NUMBER).orElseThrow().doubleValue();
  }
}
