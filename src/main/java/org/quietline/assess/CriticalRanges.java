package org.quietline.assess;

import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.quietline.assess.PriorPairs.Deviation;
import org.quietline.assess.ReportedValue.Comparison;
import org.quietline.stats.distribution.CriticalRange;

/**
 * The critical range of n readings, {@code CR(n) = f(n)·s}, which chance exceeds with 5 %. From an
 * estimated deviation f is the quantile of the studentized range with its degrees of freedom, for a
 * pair {@code √2·t(0.975, ν)}; from a published limit r it is {@code r·f(n)/f(2)} with the factors
 * 2.772, 3.314 and 3.633 of a known deviation. Source: ISO 5725-6:1994, 5.2.2 (from memory).
 *
 * <p>For three readings or more the quantile takes an integral over an integral, so it is computed
 * once at the degrees of freedom of the printed tables and read between them in proportion to
 * {@code 1/ν}, which is at most 0.02 % too wide and nowhere too narrow.
 */
final class CriticalRanges {
  private static final double CHANCE = ReadingsAgreement.SHARE_BEYOND_LIMIT;
  private static final int[] TABLE = {10, 12, 15, 20, 30, 60, 120, Integer.MAX_VALUE};
  private static final Map<Place, Double> COMPUTED = new ConcurrentHashMap<>();

  /** A place of the table; the last column is that of a known deviation. */
  private record Place(int readings, int freedom) {}

  private CriticalRanges() {}

  /** Readings against a deviation estimated from pairs. */
  static Comparison estimated(int readings, double range, Deviation deviation) {
    int freedom = (int) Math.floor(deviation.degreesOfFreedom());
    double factor =
        readings == 2 ? CriticalRange.factor(2, CHANCE, freedom) : factor(readings, freedom);
    return new Comparison(
        readings, range, deviation.size(), OptionalInt.of(freedom), factor * deviation.size());
  }

  /** Readings against a published repeatability limit of two. */
  static Comparison published(int readings, double range, double limit) {
    double pair = CriticalRange.factor(2, CHANCE);
    double widened =
        readings == 2 ? limit : limit * (CriticalRange.factor(readings, CHANCE) / pair);
    return new Comparison(readings, range, limit / pair, OptionalInt.empty(), widened);
  }

  private static double factor(int readings, int freedom) {
    int above = 0;
    while (TABLE[above] < freedom) {
      above++;
    }
    if (above == 0) {
      return computed(new Place(readings, freedom));
    }
    double low = inverse(TABLE[above]);
    double high = inverse(TABLE[above - 1]);
    double share = (1.0 / freedom - low) / (high - low);
    return share * computed(new Place(readings, TABLE[above - 1]))
        + (1 - share) * computed(new Place(readings, TABLE[above]));
  }

  private static double inverse(int freedom) {
    return freedom == Integer.MAX_VALUE ? 0 : 1.0 / freedom;
  }

  private static double computed(Place place) {
    return COMPUTED.computeIfAbsent(
        place,
        p ->
            p.freedom() == Integer.MAX_VALUE
                ? CriticalRange.factor(p.readings(), CHANCE)
                : CriticalRange.factor(p.readings(), CHANCE, p.freedom()));
  }
}
